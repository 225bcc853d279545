//! What is safe in the air of a room and beside a job, what is never done, and what the trade puts on a part that must not rust.

#![expect(clippy::unwrap_used, reason = "a test that cannot go on fails")]

mod support;

use planner::need::Need;
use planner::needs::{Working, needs};
use planner::verdict::{Finding, Grade, verdict};
use planner::{Wishes, plan};
use reference::Reference;
use shop::Shop;
use support::{example, grade_of, needs_of, report, shop};
use units::System;

/// The step of this name in a shop of one job.
fn step(room: &str, job: &str, more: &str, name: &str) -> Need {
    let text = format!("[room]\n{room}\n[[work]]\njob = \"{job}\"\n{more}\n");
    let needs = needs_of(&text);
    needs.into_iter().find(|need| need.place.words().ends_with(&format!("· {name}"))).unwrap()
}

/// What one demand found.
fn found(need: &Need, fluid: &str, demand: &str) -> Finding {
    let reference = Reference::embedded();
    let verdict = verdict(need, reference.fluid(fluid).unwrap(), reference, System::Metric);
    verdict.findings.into_iter().find(|finding| finding.demand == demand).unwrap()
}

fn minds(need: &Need, words: &str) -> bool {
    need.mind.iter().any(|(text, _)| text.contains(words))
}

// The air.

#[test]
fn a_few_millilitres_of_acetone_are_right_in_a_garage() {
    // By hand: 4 mL are 3.1 g; all of it in 40 m³ is 79 mg/m³, of 590 allowed over 8 h (250 ppm, NIOSH Pocket Guide).
    let wiping = step("volume = \"40 m3\"", "clean", "soil = \"old-threadlocker\"\narea = \"500 cm2\"", "clean");
    assert_eq!(found(&wiping, "acetone", "safe in this air").grade, Grade::Right);
    assert_eq!(grade_of(&wiping, "acetone"), Grade::Right);
}

#[test]
fn an_open_bath_of_acetone_is_wrong_here_and_the_way_out_is_said() {
    // By the dilution formula of industrial ventilation, worked by hand: 3.16 g/min from a tray of 0.06 m² take 943 m³/h to stay at 250 ppm,
    // 26 changes an hour of a garage of 36 m³: no open door gives that. A hall of 250 m³ asks for a few changes.
    let bath = "soil = \"old-threadlocker\"\nbath = \"3 L\"";
    let garage = found(&step("volume = \"36 m3\"", "clean", bath, "clean"), "acetone", "safe in this air");
    assert_eq!(garage.grade, Grade::Wrong);
    assert!(garage.given.contains("outdoors") && !garage.given.contains("air changes"), "{}", garage.given);
    let hall = found(&step("volume = \"250 m3\"", "clean", bath, "clean"), "acetone", "safe in this air");
    assert_eq!(hall.grade, Grade::Wrong);
    assert!(hall.given.contains("air changes"), "{}", hall.given);
}

#[test]
fn where_nothing_may_be_used_in_this_room_the_plan_says_how_it_could_be() {
    // Common practice, no source: a bath of acetone is work for outdoors.
    let text = "[room]\nvolume = \"36 m3\"\n[[work]]\njob = \"clean\"\nsoil = \"old-threadlocker\"\nbath = \"3 L\"\n";
    let unserved = report(text, &Wishes::default()).unserved;
    assert!(unserved.iter().any(|row| row.why.contains("in this room") && row.why.contains("outdoors")), "{unserved:?}");
}

#[test]
fn more_air_never_makes_a_fluid_worse_and_more_of_it_never_better() {
    let grade = |changes: f64, area: f64| {
        let room = format!("volume = \"30 m3\"\nair_changes = \"{changes} /h\"");
        let need = step(&room, "clean", &format!("soil = \"old-threadlocker\"\narea = \"{area} m2\""), "clean");
        ["acetone", "brake-cleaner", "alcohol"].map(|fluid| {
            let findings = verdict(&need, Reference::embedded().fluid(fluid).unwrap(), Reference::embedded(), System::Metric).findings;
            findings.into_iter().find(|finding| finding.demand == "safe in this air").map(|finding| finding.grade)
        })
    };
    let mut last = grade(0.2, 3.0);
    assert!(last.contains(&Some(Grade::Wrong)));
    for changes in [0.5, 1.0, 3.0, 10.0] {
        let now = grade(changes, 3.0);
        assert!(now.iter().zip(last).all(|(now, last)| *now <= last), "{changes}: {now:?} after {last:?}");
        last = now;
    }
    let mut last = grade(0.5, 0.01);
    for area in [0.1, 1.0, 5.0] {
        let now = grade(0.5, area);
        assert!(now.iter().zip(last).all(|(now, last)| *now >= last), "{area}: {now:?} after {last:?}");
        last = now;
    }
}

#[test]
fn beside_a_flame_a_vapour_that_may_burn_is_harmful() {
    // A tenth of the lower flammable limit is where work with flammable vapour stops: 29 CFR 1910.146, from memory.
    let bath = "soil = \"old-threadlocker\"\nbath = \"10 L\"";
    let near = step("volume = \"20 m3\"\nflames = true", "clean", bath, "clean");
    assert_eq!(found(&near, "acetone", "safe in this air").grade, Grade::Harmful);
    assert_eq!(grade_of(&near, "acetone"), Grade::Harmful);
    assert_ne!(grade_of(&step("volume = \"20 m3\"", "clean", bath, "clean"), "acetone"), Grade::Harmful);
}

// Beside the job.

#[test]
fn a_chlorinated_cleaner_on_a_part_to_be_welded_is_harmful() {
    // 29 CFR 1910.252: phosgene.
    for need in [step("", "clean", "then = \"heat\"", "clean"), step("", "solder", "", "degrease")] {
        let finding = found(&need, "chlorinated-cleaner", "safe beside this job");
        assert_eq!((finding.grade, finding.source.as_str()), (Grade::Harmful, "29-cfr-1910-252"));
        assert!(finding.why.contains("phosgene"));
        assert_eq!(found(&need, "dearomatised-solvent", "safe beside this job").grade, Grade::Right);
    }
}

#[test]
fn caustic_on_aluminium_and_acid_on_springs_are_harmful() {
    // Common practice, no source: hydrogen, and hydrogen embrittlement.
    let aluminium = step("", "clean", "soil = \"grease\"\nmaterials = [\"aluminium\"]", "clean first");
    assert_eq!(found(&aluminium, "alkaline-degreaser", "safe beside this job").grade, Grade::Harmful);
    let spring = step("", "clean", "soil = \"rust\"\nmaterials = [\"hardened-steel\"]", "clean");
    assert_eq!(found(&spring, "rust-remover", "safe beside this job").grade, Grade::Harmful);
}

#[test]
fn every_spray_can_in_the_cupboard_counts() {
    // A dozen may stand loose by the program's own rule; an empty one is none.
    let can = |left: &str| format!("[[pot]]\nfluid = \"brake-cleaner\"\nleft = \"{left}\"\n");
    let report = report(&format!("[[work]]\njob = \"mark\"\n{}{}", can("400 mL").repeat(13), can("0 mL")), &Wishes::default());
    let fire = report.cautions.iter().find(|caution| caution.about.starts_with("fire: ")).unwrap();
    let said = |words: &str| fire.text.contains(words);
    assert!(said("In all: 13 spray cans") && said("that is more than may stand loose"), "{}", fire.text);
}

// What is never done, whatever the user says.

/// Shops that ask for what is barred in every way a file can.
fn asking(fluid: &str) -> Vec<(Shop, Wishes)> {
    let lathe = format!(
        "[[machine]]\nname = \"m\"\n[[machine.point]]\nname = \"p\"\nkind = \"gear head\"\npriority = \"high\"\nmaker = {{ use = [\"{fluid}\"] }}\n"
    );
    let everything_else = "avoid = [\"dearomatised-solvent\", \"acetone\", \"isopropanol\", \"alcohol\", \"mineral-spirits\", \"kerosene\", \
                           \"neutral-detergent\", \"brake-cleaner\", \"quench-oil\"]\n";
    let work = "[[work]]\njob = \"clean\"\npriority = \"high\"\n[[work]]\njob = \"harden\"\npriority = \"high\"\n[[work]]\njob = \"finish\"\n\
                [[work]]\njob = \"solder\"\npriority = \"high\"\n";
    let pot = format!("[[pot]]\nfluid = \"{fluid}\"\nleft = \"1 L\"\n");
    let texts = [format!("{lathe}{work}{pot}"), format!("{everything_else}{work}{pot}"), format!("{work}{lathe}")];
    let wishes = || [Wishes::default(), Wishes { rungs: Some(40), budget: Some(500.0), ..Wishes::default() }];
    texts.iter().flat_map(|text| wishes().map(|wishes| (shop(text), wishes))).collect()
}

#[test]
fn no_option_no_priority_and_no_makers_word_lifts_a_bar() {
    // Petrol: flash point −40 °C; used engine oil: IARC 33; chlorinated cleaners: 40 CFR 751; hydrochloric acid: common practice.
    let reference = Reference::embedded();
    for fluid in ["petrol", "used-engine-oil", "chlorinated-cleaner", "cutting-oil-chlorinated", "hydrochloric-acid", "hot-alkaline-black"]
    {
        assert!(reference.fluid(fluid).unwrap().barred.is_some(), "{fluid}");
        for (shop, wishes) in asking(fluid) {
            let plan = plan(&shop, reference, &wishes).unwrap();
            let place = plan.fluids.iter().position(|weighed| weighed.fluid.key == fluid).unwrap();
            assert!(plan.fluids[place].grades.iter().all(|grade| *grade == Grade::Harmful), "{fluid}");
            assert!(!plan.kept.contains(&place) && plan.servings.iter().all(|serving| serving.fluid != Some(place)), "{fluid}");
            assert!(plan.within_budget.is_none_or(|best| !best.set.contains(&place)), "{fluid}");
        }
    }
}

#[test]
fn what_must_never_be_done_stands_beside_the_work() {
    // Common practice, no source, but for the leak (EN 14291) and used oil (IARC 33).
    for (job, more, name, words) in [
        ("solder", "", "pickle", "water poured into acid"),
        ("solder", "", "pickle", "steel in a pickle that has held copper"),
        ("solder", "", "flux", "cadmium"),
        ("solder", "", "flux", "calcium gluconate gel"),
        ("finish", "", "black", "even a mouthful of it has killed"),
        ("solder", "process = \"soft\"", "flux", "Never solder with lead in it for drinking water"),
        ("clean", "", "clean", "chlorinated solvent near heat"),
        ("clean", "materials = [\"aluminium\"]", "clean", "caustic on aluminium"),
        ("harden", "", "quench", "used engine oil"),
        ("leak test", "", "leak test", "a flame to look for a leak"),
        ("leak test", "medium = \"steam\"", "leak test", "Never test a boiler or a receiver with air"),
        ("leak test", "", "leak test", "A receiver is proved with water"),
        ("derust", "", "take off rust", "hydrochloric pickle"),
        ("store", "", "put away", "an unflued flame to dry a room"),
    ] {
        assert!(minds(&step("", job, more, name), words), "{job}: {words}");
    }
    // A pickle that never held copper is no copper waste: chemistry.
    assert!(minds(&step("", "solder", "", "pickle"), "copper waste"));
    let steel = step("", "solder", "metals = [\"mild-steel\"]", "pickle");
    assert!(!minds(&steel, "copper waste") && minds(&steel, "not fit for the drain"));
    // Steam pipework is tried cold, full of water: common practice, no source.
    let steam = step("", "leak test", "medium = \"steam\"", "leak test");
    assert_eq!((grade_of(&steam, "cold-water"), grade_of(&steam, "leak-test-fluid")), (Grade::Right, Grade::Wrong));
    // No oil, and no test liquid either, is named for oxygen (ASTM G63).
    let oxygen = needs_of("[[work]]\njob = \"leak test\"\nmedium = \"oxygen\"\n");
    assert!(oxygen.iter().all(|need| need.nothing.is_some()));
}

// The trade.

#[test]
fn plain_oil_is_the_first_answer_for_a_part_that_must_not_rust() {
    // Common practice, no source.
    let handled = step("", "finish", "finish = \"protect\"", "protect");
    assert_eq!(grade_of(&handled, "rust-oil"), Grade::Right);
    assert_eq!(grade_of(&handled, "paste-wax"), Grade::WillDo);
}

#[test]
fn a_thin_wax_film_is_for_bright_parts_seldom_touched() {
    // Common practice, no source.
    let shelf = step("", "finish", "finish = \"protect\"\npart = \"seldom touched\"", "protect");
    assert_eq!(grade_of(&shelf, "paste-wax"), Grade::Right);
    assert_eq!(grade_of(&shelf, "rust-oil"), Grade::WillDo);
    assert_eq!(grade_of(&step("", "finish", "finish = \"protect\"\npart = \"sliding\"", "protect"), "paste-wax"), Grade::Wrong);
}

#[test]
fn a_part_in_sight_is_blackened_with_a_wipe_and_oiled_and_a_bath_covers_what_it_blackens() {
    // Common practice, no source.
    let wiped = step("", "finish", "", "black");
    assert_eq!(grade_of(&wiped, "blackening-wipe"), Grade::Right);
    assert_eq!(grade_of(&wiped, "cold-blackening"), Grade::Wrong);
    assert!(grade_of(&step("", "finish", "", "oil"), "water-displacing-film").serves());
    // By hand: a block of 60 × 40 × 20 mm stands 60 high in 60 × 40 mm with 10 mm all round, 10 under and 25 over it:
    // 2400 mm² × 95 mm less 48 cm³ of steel = 0.18 L.
    let dipped = step("", "finish", "immersed = true", "black");
    assert_eq!(grade_of(&dipped, "cold-blackening"), Grade::Right);
    assert!(minds(&dipped, "0.18 L") || minds(&dipped, "180 mL"), "{:?}", dipped.mind);
    assert!(grade_of(&step("", "finish", "immersed = true", "oil"), "water-displacing-film").serves());
}

#[test]
fn a_coat_counts_four_times_on_a_thread() {
    // Geometry: a flank of 60° moves t/sin 30° each side: 2.5 µm of black take 10 µm of a pitch diameter, 5 µm of wax 20 µm.
    let thread = |finish: &str| step("", "finish", &format!("finish = \"{finish}\"\npart = \"thread\"\ntolerance = \"50 µm\""), finish);
    let (black, wax) = (thread("black"), thread("wax"));
    assert!(minds(&black, "10 µm") && minds(&black, "it may stay"), "{:?}", black.mind);
    assert!(minds(&wax, "20 µm") && minds(&wax, "too much"), "{:?}", wax.mind);
    assert!(!minds(&thread("oil"), "pitch diameter"));
}

#[test]
fn acetone_degreases_and_takes_off_layout_dye() {
    // Common practice, no source.
    assert_eq!(grade_of(&step("", "finish", "", "degrease"), "acetone"), Grade::Right);
    assert!(grade_of(&step("", "clean", "soil = \"layout-dye\"", "clean"), "acetone").serves());
}

#[test]
fn soapy_water_and_never_a_flame_finds_a_leak() {
    // EN 14291.
    let leak = step("", "leak test", "", "leak test");
    assert!(grade_of(&leak, "neutral-detergent").serves());
    assert!(minds(&leak, "Never a flame"));
}

#[test]
fn pickle_is_kept_in_glass_or_plastic_away_from_bright_steel() {
    // Common practice, no source.
    let pickle = step("", "solder", "", "pickle");
    assert!(pickle.how.words(reference::Form::Solid).contains("glass or plastic"));
    assert!(minds(&pickle, "from bright steel"));
}

#[test]
fn quenching_takes_fresh_quench_oil_and_never_used_engine_oil() {
    // Common practice; IARC 33.
    let quench = step("", "harden", "", "quench");
    assert_eq!(grade_of(&quench, "quench-oil"), Grade::Right);
    assert_eq!(grade_of(&quench, "used-engine-oil"), Grade::Harmful);
}

/// What is said about the year at the metal.
fn year(shop: &Shop) -> String {
    let needs = needs(shop, Reference::embedded(), Working::Dropped).unwrap();
    let minds = needs.iter().flat_map(|need| &need.mind);
    minds.into_iter().find(|(text, _)| text.contains("above 80 %")).unwrap().0.to_string()
}

#[test]
fn a_weather_file_stands_before_the_months_of_a_climate() {
    // A typical year of PVGIS at 45° N 8° E.
    let file = std::fs::read_to_string(format!("{}/../../tests/weather/pvgis_tmy_45N_8E.csv", env!("CARGO_MANIFEST_DIR"))).unwrap();
    let mut named = shop("[room]\nweather = \"year.csv\"\n[[work]]\njob = \"store\"\n");
    let unread = year(&named);
    assert!(unread.contains("was not read"));
    named.room.weather.as_mut().unwrap().text = Some(file.into());
    let read = year(&named);
    assert!(!read.contains("was not read") && read != unread);
}

#[test]
fn a_damper_room_never_spares_a_coat() {
    // Rust begins near 60 % at the metal (Vernon 1935, from memory).
    let lasts = |room: &str, fluid: &str| {
        let months = [0.25, 0.5, 1.0, 2.0, 4.0, 8.0, 16.0];
        let serves =
            |months: &&f64| grade_of(&step(room, "store", &format!("area = \"100 cm2\"\nmonths = {months}"), "put away"), fluid).serves();
        months.iter().take_while(serves).count()
    };
    for coat in ["rust-oil", "preservative-oil", "soft-wax"] {
        let lasting = ["60 %", "75 %", "90 %"].map(|humidity| lasts(&format!("humidity = \"{humidity}\""), coat));
        assert!(lasting.is_sorted_by(|drier, damper| drier >= damper) && lasting[0] > lasting[2], "{coat}: {lasting:?}");
    }
}

#[test]
fn cautions_come_from_what_is_owned_and_planned() {
    // 40 CFR 751: a chlorinated cleaner in the cupboard is handed in.
    let text = format!("{}[[pot]]\nfluid = \"acetone\"\nleft = \"6 L\"\n", example("first-lathe"));
    let report = report(&text, &Wishes::default());
    assert!(report.cautions.iter().any(|caution| caution.about.starts_with("fire") && caution.text.contains("metal cupboard")));
}

#[test]
fn what_must_not_be_used_is_named_where_it_stands() {
    // 40 CFR 751 and common practice: a chlorinated cleaner or petrol in the cupboard is handed in, not used up.
    let pot = |fluid: &str| format!("[[pot]]\nfluid = \"{fluid}\"\nleft = \"1 L\"\n");
    let text = format!("{}{}{}", example("first-lathe"), pot("chlorinated-cleaner"), pot("petrol"));
    let report = report(&text, &Wishes::default());
    for name in ["chlorinated solvent cleaner", "petrol"] {
        assert!(report.cautions.iter().any(|caution| caution.about == format!("not to be used: {name}")), "{name}: {:#?}", report.cautions);
    }
}
