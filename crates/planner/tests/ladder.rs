//! The ladder against brute force, and its laws.
//!
//! The expectations come from trying every set of fluids: a definition, no source needed.

mod ladder_shop;

use ladder_shop::shop;
use planner::ladder::{Best, Candidate, Instance, LadderError, Options, Step, Task, best_within, climb};
use proptest::prelude::*;

const WILL_DO: f64 = 0.6;

fn quick() -> Options {
    Options { draws: 0, ..Options::default() }
}

/// What a set serves, straight from the definition.
fn value(instance: &Instance, owned: &dyn Fn(usize) -> bool) -> f64 {
    let has = |fluid: &usize| instance.fluids[*fluid].allowed && (instance.fluids[*fluid].owned || owned(*fluid));
    let grade = |step: &Step| {
        if step.right.iter().any(has) {
            1.0
        } else if step.will_do.iter().any(has) {
            WILL_DO
        } else {
            0.0
        }
    };
    let task = |task: &Task| {
        let grades: Vec<f64> = task.steps.iter().map(grade).collect();
        if grades.contains(&0.0) {
            0.0
        } else {
            task.weight * task.steps.iter().zip(&grades).map(|(step, grade)| step.share * grade).sum::<f64>()
        }
    };
    instance.jobs.iter().map(task).sum()
}

fn buyable(instance: &Instance) -> Vec<usize> {
    (0..instance.fluids.len()).filter(|&f| instance.fluids[f].allowed && !instance.fluids[f].owned).collect()
}

/// The most that any set serves whose fluids pass `fits`, by trying them all.
fn brute(instance: &Instance, fits: impl Fn(&[usize]) -> bool) -> f64 {
    let buyable = buyable(instance);
    (0..1_u32 << buyable.len())
        .map(|mask| buyable.iter().enumerate().filter(|&(bit, _)| mask >> bit & 1 == 1).map(|(_, &f)| f).collect::<Vec<_>>())
        .filter(|set| fits(set))
        .map(|set| value(instance, &|f| set.contains(&f)))
        .fold(0.0, f64::max)
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1.0)
}

fn cost(instance: &Instance, best: &Best) -> f64 {
    best.set.iter().map(|&f| instance.fluids[f].price).sum()
}

prop_compose! {
    /// A step that some of the fluids serve; none, too.
    fn a_step(fluids: usize)(grades in proptest::collection::vec(0..6_u8, fluids)) -> (Vec<usize>, Vec<usize>) {
        let with = |grade| (0..fluids).filter(|&f| grades[f] == grade).collect();
        (with(5), with(4))
    }
}

fn an_instance(most_steps: usize) -> impl Strategy<Value = Instance> {
    (2..=12_usize).prop_flat_map(move |fluids| {
        let candidate = (1..40_u32, 0..4_u32, prop::bool::weighted(0.1), prop::bool::weighted(0.9))
            .prop_map(|(price, hazards, owned, allowed)| Candidate { price: f64::from(price) / 2.0, hazards, owned, allowed });
        // Few weights and few prices, so that ties are common.
        let task = (1..=8_u32, proptest::collection::vec((a_step(fluids), 1..4_u32), 1..=most_steps)).prop_map(|(weight, steps)| {
            let all: u32 = steps.iter().map(|(_, share)| share).sum();
            let step = |((right, will_do), share): ((Vec<usize>, Vec<usize>), u32)| Step {
                share: f64::from(share) / f64::from(all),
                right,
                will_do,
            };
            Task { weight: f64::from(weight), steps: steps.into_iter().map(step).collect() }
        });
        (proptest::collection::vec(candidate, fluids), proptest::collection::vec(task, 1..=14))
            .prop_map(|(fluids, jobs)| Instance { fluids, jobs })
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_optimum_beside_each_rung_is_that_of_brute_force(instance in an_instance(3)) {
        let ladder = climb(&instance, &quick()).unwrap();
        prop_assert!(near(ladder.start, value(&instance, &|_| false)));
        let mut owned = Vec::new();
        for (place, rung) in ladder.rungs.iter().enumerate() {
            owned.push(rung.fluid);
            prop_assert!(near(rung.total, value(&instance, &|f| owned.contains(&f))));
            prop_assert!(near(rung.best_possible, brute(&instance, |set| set.len() <= place + 1)), "rung {place}: {rung:?}");
            prop_assert!(near(rung.best_possible, value(&instance, &|f| rung.best_set.contains(&f))));
            prop_assert!(rung.gap == 0.0 && rung.best_set.len() <= place + 1);
        }
    }

    #[test]
    fn the_best_for_a_budget_is_that_of_brute_force(instance in an_instance(3), budget in 0.0..120.0_f64) {
        let best = best_within(&instance, budget, &quick()).unwrap();
        prop_assert!(near(best.value, brute(&instance, |set| set.iter().map(|&f| instance.fluids[f].price).sum::<f64>() <= budget)));
        prop_assert!(near(best.value, value(&instance, &|f| best.set.contains(&f))));
        prop_assert!(best.gap == 0.0 && cost(&instance, &best) <= budget);
    }

    #[test]
    fn totals_never_fall_and_never_pass_the_optimum(instance in an_instance(4)) {
        let ladder = climb(&instance, &quick()).unwrap();
        let mut before = ladder.start;
        for rung in &ladder.rungs {
            prop_assert!(rung.total >= before && rung.best_possible >= rung.total - 1e-9);
            prop_assert!(near(rung.gain, rung.total - before));
            before = rung.total;
        }
        // A ladder ends only at its last rung or where nothing is left to gain.
        prop_assert!(ladder.rungs.len() == 12 || near(before, ladder.everything), "ends at {before} of {}", ladder.everything);
    }

    #[test]
    fn a_gain_never_grows_when_all_tasks_have_one_step(instance in an_instance(1)) {
        let gains: Vec<f64> = climb(&instance, &quick()).unwrap().rungs.iter().map(|rung| rung.gain).collect();
        prop_assert!(gains.is_sorted_by(|a, b| *b <= *a + 1e-9), "{gains:?}");
    }

    #[test]
    fn each_single_purchase_is_the_best_and_cheapest_next_one(instance in an_instance(1)) {
        let mut owned: Vec<usize> = Vec::new();
        for rung in climb(&instance, &quick()).unwrap().rungs {
            let before = value(&instance, &|f| owned.contains(&f));
            let gain = |fluid: usize| value(&instance, &|f| f == fluid || owned.contains(&f)) - before;
            let taste = |f: usize| (instance.fluids[f].price, instance.fluids[f].hazards, f);
            for other in buyable(&instance).into_iter().filter(|f| !owned.contains(f)) {
                prop_assert!(gain(other) <= rung.gain + 1e-9);
                prop_assert!(gain(other) < rung.gain - 1e-9 || taste(rung.fluid) <= taste(other), "{other} is nicer than {}", rung.fluid);
            }
            owned.push(rung.fluid);
        }
    }

    #[test]
    fn more_budget_never_covers_less(instance in an_instance(3), budget in 0.0..60.0_f64, more in 0.0..40.0_f64) {
        let (less, more) = (best_within(&instance, budget, &quick()).unwrap(), best_within(&instance, budget + more, &quick()).unwrap());
        prop_assert!(more.value >= less.value - 1e-9);
    }

    #[test]
    fn the_budget_is_spent_at_least_as_well_as_step_by_step(instance in an_instance(3), budget in 0.0..120.0_f64) {
        let (mut left, mut owned) = (budget, Vec::new());
        for rung in climb(&instance, &quick()).unwrap().rungs {
            if instance.fluids[rung.fluid].price <= left {
                left -= instance.fluids[rung.fluid].price;
                owned.push(rung.fluid);
            }
        }
        prop_assert!(best_within(&instance, budget, &quick()).unwrap().value >= value(&instance, &|f| owned.contains(&f)) - 1e-9);
    }

    #[test]
    fn forbidding_the_first_rung_gives_a_sound_alternative(instance in an_instance(3)) {
        let ladder = climb(&instance, &quick()).unwrap();
        prop_assume!(!ladder.rungs.is_empty());
        let first = ladder.rungs[0].fluid;
        let mut without = instance;
        without.fluids[first].allowed = false;
        let other = climb(&without, &quick()).unwrap();
        prop_assert!(other.everything <= ladder.everything + 1e-9);
        let mut owned = Vec::new();
        for (rung, place) in other.rungs.iter().zip(1..) {
            owned.push(rung.fluid);
            prop_assert!(rung.fluid != first && !rung.best_set.contains(&first));
            prop_assert!(near(rung.total, value(&without, &|f| owned.contains(&f))));
            prop_assert!(near(rung.best_possible, brute(&without, |set| set.len() <= place)));
        }
    }
}

#[test]
fn a_whole_shop_agrees_with_trying_every_set() {
    let instance = shop(1, 16, 60, 7);
    let served: Vec<(u32, f64)> = (0..1_u32 << 16).map(|set| (set, value(&instance, &|f| set >> f & 1 == 1))).collect();
    let most = |fits: &dyn Fn(u32) -> bool| served.iter().filter(|(set, _)| fits(*set)).map(|(_, value)| *value).fold(0.0, f64::max);
    let ladder = climb(&instance, &quick()).unwrap();
    for place in [2, 5, 8] {
        let expected = most(&|set| set.count_ones() <= place);
        let rung = &ladder.rungs[usize::try_from(place).unwrap() - 1];
        assert!((rung.best_possible - expected).abs() < 1e-5 && rung.gap == 0.0, "{expected} beside {rung:?}");
    }
    let price = |set: u32| (0..16).filter(|f| set >> f & 1 == 1).map(|f| instance.fluids[f].price).sum::<f64>();
    for budget in [20.0, 60.0, 111.0] {
        let best = best_within(&instance, budget, &quick()).unwrap();
        let expected = most(&|set| price(set) <= budget);
        assert!((best.value - expected).abs() < 1e-5 && best.gap == 0.0, "{budget}: {expected} beside {best:?}");
    }
}

fn plain(price: f64) -> Candidate {
    Candidate { price, hazards: 0, owned: false, allowed: true }
}

fn point(weight: f64, right: Vec<usize>) -> Task {
    Task { weight, steps: vec![Step { share: 1.0, right, will_do: vec![] }] }
}

#[test]
fn fluids_that_pay_only_together_stand_on_consecutive_rungs() {
    // 0 and 1 open a job worth 10 together, 5 each; 2 alone serves a point worth 4, 3 one worth 6.
    let both = |share, fluid| Step { share, right: vec![fluid], will_do: vec![] };
    let jobs = vec![Task { weight: 10.0, steps: vec![both(0.5, 0), both(0.5, 1)] }, point(4.0, vec![2]), point(6.0, vec![3])];
    let instance = Instance { fluids: vec![plain(5.0), plain(3.0), plain(1.0), plain(1.0)], jobs };
    let ladder = climb(&instance, &quick()).unwrap();
    let order: Vec<_> = ladder.rungs.iter().map(|rung| (rung.fluid, rung.opens_with_next)).collect();
    assert_eq!(order, [(3, false), (1, true), (0, false), (2, false)]);
    assert_eq!(ladder.rungs[1].gain, 0.0);
    assert_eq!(ladder.rungs[2].newly_served, [0]);
    assert_eq!((ladder.rungs[3].right, ladder.rungs[3].will_do), (3, 0));
    // No room for both: the bundle is left out.
    let short = climb(&instance, &Options { rungs: 2, ..quick() }).unwrap();
    assert_eq!(short.rungs.iter().map(|rung| rung.fluid).collect::<Vec<_>>(), [3, 2]);
    assert_eq!(short.rungs[1].best_possible, 10.0);
}

#[test]
fn ties_go_to_the_cheaper_then_the_safer_then_the_earlier() {
    let mut fluids = vec![plain(5.0), plain(4.0), plain(4.0), plain(4.0)];
    fluids[1].hazards = 2;
    let ladder = climb(&Instance { fluids, jobs: vec![point(1.0, vec![0, 1, 2, 3])] }, &quick()).unwrap();
    assert_eq!(ladder.rungs.iter().map(|rung| rung.fluid).collect::<Vec<_>>(), [2]);
}

#[test]
fn the_draws_say_how_firm_a_rung_is() {
    // 0 is worth far more than any draw of 1 or 2; between those two, worth the same, it is a toss.
    let jobs = vec![point(100.0, vec![0]), point(1.0, vec![1]), point(1.0, vec![2])];
    let ladder = climb(&Instance { fluids: vec![plain(1.0); 3], jobs }, &Options::default()).unwrap();
    assert_eq!(ladder.rungs[0].holds_in, 1.0);
    // 500 tosses: six standard deviations of the share are 0.134.
    assert!((ladder.rungs[1].holds_in - 0.5).abs() < 0.134, "{}", ladder.rungs[1].holds_in);
    assert_eq!(ladder.rungs[1].holds_in, ladder.rungs[2].holds_in);
}

#[test]
fn weights_are_drawn_with_the_stated_scatter() {
    // ln(w₀/w₁) is normal with σ = 0.3·√2 about ln 1.5, so 0 stays first with probability Φ(ln 1.5 / 0.4243) = Φ(0.9557) = 0.830
    // (normal table, from memory). Six standard deviations of the share of 500 draws are 0.101.
    let ladder =
        climb(&Instance { fluids: vec![plain(1.0); 2], jobs: vec![point(1.5, vec![0]), point(1.0, vec![1])] }, &Options::default())
            .unwrap();
    assert!((ladder.rungs[0].holds_in - 0.830).abs() < 0.101, "{}", ladder.rungs[0].holds_in);
}

#[test]
fn the_same_shop_gives_the_same_ladder() {
    let instance = shop(3, 40, 60, 7);
    let options = Options { rungs: 8, draws: 100, ..Options::default() };
    assert_eq!(climb(&instance, &options).unwrap(), climb(&instance, &options).unwrap());
}

#[test]
fn what_contradicts_itself_is_refused() {
    let with = |fluid, task| climb(&Instance { fluids: vec![fluid], jobs: vec![task] }, &quick()).unwrap_err();
    assert_eq!(with(plain(1.0), point(1.0, vec![1])), LadderError::NoSuchFluid { task: 0, fluid: 1, fluids: 1 });
    assert!(matches!(with(plain(f64::NAN), point(1.0, vec![0])), LadderError::BadNumber { .. }));
    assert!(matches!(with(plain(1.0), point(-1.0, vec![0])), LadderError::BadNumber { .. }));
    let half = Task { weight: 1.0, steps: vec![Step { share: 0.5, right: vec![0], will_do: vec![] }] };
    assert_eq!(with(plain(1.0), half), LadderError::SharesDoNotAddUp { task: 0, sum: 0.5 });
}
