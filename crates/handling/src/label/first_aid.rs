//! What to do first when it has got somebody, in one or two lines.

use reference::hazard::HazardClass as H;

use super::Mixture;

struct Aid {
    concerns: Concern,
    says: &'static str,
}

/// Whom a first aid concerns.
enum Concern {
    /// A product of such a class.
    Class(fn(H) -> bool),
    /// One that holds one of these substances, for which the aid of its class would do harm by what it leaves out.
    Holds(&'static [&'static str]),
}

/// From this share of the mass on: the least at which CLP gives fluorides a class; *from memory*.
const FROM_SHARE: f64 = 0.001;

/// The first that concerns each place of the body is said. *Common practice* of first aid; the safety data sheet comes first.
const AIDS: &[&[Aid]] = &[
    &[
        Aid {
            concerns: Concern::Holds(&["selenious-acid"]),
            says: "Swallowed, even a mouthful has killed: rinse the mouth, do not make them vomit, to hospital at once with the data sheet. \
                   Keep it locked, out of reach of children.",
        },
        Aid {
            concerns: Concern::Class(|class| class == H::AspTox1),
            says: "Swallowed: do not make them vomit; call the poison centre at once.",
        },
        Aid {
            concerns: Concern::Class(|class| H::SkinCorr1 <= class && class <= H::SkinCorr1C),
            says: "Swallowed: rinse the mouth, do not make them vomit; call the poison centre at once.",
        },
        Aid {
            concerns: Concern::Class(|class| H::AcuteTox1Oral <= class && class <= H::AcuteTox4Oral),
            says: "Swallowed: rinse the mouth; call the poison centre at once.",
        },
    ],
    &[
        Aid {
            concerns: Concern::Class(|class| H::SkinCorr1 <= class && class <= H::SkinCorr1C || class == H::EyeDam1),
            says: "Eyes: rinse with running water for 20 minutes, lids held open, and get to a doctor.",
        },
        Aid { concerns: Concern::Class(|class| class == H::EyeIrrit2), says: "Eyes: rinse with running water for 15 minutes." },
    ],
    &[
        Aid {
            concerns: Concern::Holds(&["potassium-bifluoride", "potassium-fluoride", "hydrogen-fluoride"]),
            says: "Skin: clothes off, rinse at once with much water and for long, then calcium gluconate gel, kept beside it; to hospital at \
                   once, even without pain, with the data sheet.",
        },
        Aid {
            concerns: Concern::Class(|class| {
                H::SkinCorr1 <= class && class <= H::SkinCorr1C || H::AcuteTox1Dermal <= class && class <= H::AcuteTox4Dermal
            }),
            says: "Skin: clothes off, rinse with much water for 15 minutes.",
        },
        Aid {
            concerns: Concern::Class(|class| class == H::SkinIrrit2 || H::SkinSens1 <= class && class <= H::SkinSens1B),
            says: "Skin: wash with soap and water.",
        },
    ],
    &[Aid {
        concerns: Concern::Class(|class| {
            H::AcuteTox1Inhalation <= class && class <= H::AcuteTox4Inhalation
                || matches!(class, H::StotSe3Irritation | H::StotSe3Narcotic | H::RespSens1)
        }),
        says: "Breathed: out into fresh air; call for help if breathing is hard.",
    }],
];

pub(super) fn first_aid(classes: &[H], mixture: &Mixture<'_>) -> String {
    let counting = || mixture.parts.iter().filter(|part| part.share.high >= FROM_SHARE);
    let concerns = |aid: &&Aid| match aid.concerns {
        Concern::Class(concerns) => classes.iter().any(|class| concerns(*class)),
        Concern::Holds(substances) => counting().any(|part| substances.contains(&part.substance.key.as_str())),
    };
    let said: Vec<_> = AIDS.iter().filter_map(|place| place.iter().find(concerns)).map(|aid| aid.says).collect();
    if said.is_empty() { "If you feel unwell, ask a doctor and show this label.".to_owned() } else { said.join(" ") }
}
