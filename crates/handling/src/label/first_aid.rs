//! What to do first when it has got somebody, in one or two lines.

use reference::hazard::HazardClass as H;

struct Aid {
    concerns: fn(H) -> bool,
    says: &'static str,
}

/// The first that concerns each place of the body is said. *Common practice* of first aid; the safety data sheet comes first.
const AIDS: &[&[Aid]] = &[
    &[
        Aid { concerns: |class| class == H::AspTox1, says: "Swallowed: do not make them vomit; call the poison centre at once." },
        Aid {
            concerns: |class| H::SkinCorr1 <= class && class <= H::SkinCorr1C,
            says: "Swallowed: rinse the mouth, do not make them vomit; call the poison centre at once.",
        },
        Aid {
            concerns: |class| H::AcuteTox1Oral <= class && class <= H::AcuteTox4Oral,
            says: "Swallowed: rinse the mouth; call the poison centre at once.",
        },
    ],
    &[
        Aid {
            concerns: |class| H::SkinCorr1 <= class && class <= H::SkinCorr1C || class == H::EyeDam1,
            says: "Eyes: rinse with running water for 20 minutes, lids held open, and get to a doctor.",
        },
        Aid { concerns: |class| class == H::EyeIrrit2, says: "Eyes: rinse with running water for 15 minutes." },
    ],
    &[
        Aid {
            concerns: |class| H::SkinCorr1 <= class && class <= H::SkinCorr1C || H::AcuteTox1Dermal <= class && class <= H::AcuteTox4Dermal,
            says: "Skin: clothes off, rinse with much water for 15 minutes.",
        },
        Aid {
            concerns: |class| class == H::SkinIrrit2 || H::SkinSens1 <= class && class <= H::SkinSens1B,
            says: "Skin: wash with soap and water.",
        },
    ],
    &[Aid {
        concerns: |class| {
            H::AcuteTox1Inhalation <= class && class <= H::AcuteTox4Inhalation
                || matches!(class, H::StotSe3Irritation | H::StotSe3Narcotic | H::RespSens1)
        },
        says: "Breathed: out into fresh air; call for help if breathing is hard.",
    }],
];

pub(super) fn first_aid(classes: &[H]) -> String {
    let said: Vec<_> = AIDS
        .iter()
        .filter_map(|place| place.iter().find(|aid| classes.iter().any(|class| (aid.concerns)(*class))))
        .map(|aid| aid.says)
        .collect();
    if said.is_empty() { "If you feel unwell, ask a doctor and show this label.".to_owned() } else { said.join(" ") }
}
