//! The whole answer: what to buy in which order, what goes where, what stays unserved, what to mind.

use reference::{Fluid, Reference};
use shop::{Pot, Problem, Shop};

use crate::chart::{Serving, serve};
use crate::ladder::{self, Candidate, Instance, Task};
use crate::need::Need;
use crate::needs::{Working, needs};
use crate::season::{Season, seasons};
use crate::use_rate::{Choice, best_pack, cheapest_pack, choices, yearly_use};
use crate::verdict::{Grade, grade};

/// What the user asks of a plan beside the shop itself.
#[derive(Debug, Clone, Default)]
pub struct Wishes {
    /// How many purchases to show at most.
    pub rungs: Option<usize>,
    /// Fluids and classes to do without.
    pub without: Vec<String>,
    /// Money to spend, in the shop's currency.
    pub budget: Option<f64>,
}

/// How many purchases are shown unless asked otherwise.
const RUNGS: usize = 12;

/// How many branches the search for each optimum may open before it states the gap that is left. Real shops need a few.
const NODES: u64 = 300;

/// Why there is no plan.
#[derive(Debug, thiserror::Error)]
pub enum PlanError {
    /// The shop file's values contradict each other or lie outside a formula's range.
    #[error("the shop cannot be worked out")]
    Shop(Vec<Problem>),
    /// The ladder could not be built.
    #[error("the buying order cannot be worked out: {0}")]
    Ladder(#[from] ladder::LadderError),
}

/// A plan, with all that was weighed for it.
pub struct Plan<'a> {
    /// The shop, its pots as they stood when it was planned or [`take_pots`](Self::take_pots) was called last.
    pub shop: Shop,
    /// The data.
    pub reference: &'a Reference,
    /// The needs, points first.
    pub needs: Vec<Need>,
    /// The fluids weighed, in the order of the data.
    pub fluids: Vec<Weighed<'a>>,
    /// The buying order; its fluids and tasks are places in `fluids` and `tasks`.
    pub ladder: ladder::Ladder,
    /// The needs of each task, as places in `needs`.
    pub tasks: Vec<Vec<usize>>,
    /// The exact best purchase for the money, where a sum was given.
    pub within_budget: Option<ladder::Best>,
    /// That sum, in the shop's currency.
    pub budget: Option<f64>,
    /// Fluids the plan counts on: owned, there for nothing, or on the ladder; in that order.
    pub kept: Vec<usize>,
    /// What goes on each point and into each step: one for each need.
    pub servings: Vec<Serving>,
    /// Where the season changes the fluid.
    pub seasons: Vec<Season>,
}

/// A fluid held against every need.
pub struct Weighed<'a> {
    /// The fluid.
    pub fluid: &'a Fluid,
    /// Its grade at each need.
    pub grades: Vec<Grade>,
    /// The pack to buy; none for what is there for nothing.
    pub choice: Option<Choice<'a>>,
    /// The cheapest pack that lasts a year, or the pack to buy where none does.
    pub frugal: Option<Choice<'a>>,
    /// It stands in the cupboard.
    pub owned: bool,
    /// It may be bought and used.
    pub allowed: bool,
}

/// Works out the plan of a shop.
///
/// # Errors
/// [`PlanError`].
pub fn plan<'a>(shop: &Shop, reference: &'a Reference, wishes: &Wishes) -> Result<Plan<'a>, PlanError> {
    let needs = needs(shop, reference, Working::Dropped).map_err(PlanError::Shop)?;
    let fluids = weigh(shop, reference, &needs, &wishes.without);
    let tasks = tasks(&needs);
    let instance = instance(&fluids, &needs, &tasks);
    let effort = ladder::Effort { nodes: NODES, time: None };
    let options = ladder::Options { rungs: wishes.rungs.unwrap_or(RUNGS), effort, ..ladder::Options::default() };
    let ladder = ladder::climb(&instance, &options)?;
    let within_budget = wishes.budget.map(|budget| ladder::best_within(&frugal(instance, &fluids), budget, &options)).transpose()?;
    let mut kept: Vec<usize> = (0..fluids.len()).filter(|place| fluids[*place].allowed && fluids[*place].has_already()).collect();
    // With a sum of money the plan is what the sum buys; without one it is the ladder.
    let bought: Vec<usize> = match &within_budget {
        Some(best) => best.set.clone(),
        None => ladder.rungs.iter().map(|rung| rung.fluid).collect(),
    };
    kept.extend(bought.into_iter().filter(|place| !fluids[*place].has_already()));
    let servings = serve(&needs, &fluids, &kept, reference, shop.units);
    let seasons = seasons(&needs, &fluids, reference);
    let shop = shop.clone();
    Ok(Plan { shop, reference, needs, fluids, ladder, tasks, within_budget, budget: wishes.budget, kept, servings, seasons })
}

impl Weighed<'_> {
    /// Whether nothing has to be bought to have it.
    #[must_use]
    pub fn has_already(&self) -> bool {
        self.owned || self.fluid.always_there
    }
}

fn weigh<'a>(shop: &Shop, reference: &'a Reference, needs: &[Need], without: &[String]) -> Vec<Weighed<'a>> {
    let refused = |fluid: &Fluid| shop.avoid.iter().chain(without).any(|word| fluid.is(word));
    reference
        .fluids
        .values()
        .map(|fluid| {
            let grades: Vec<Grade> = needs.iter().map(|need| grade(need, fluid, reference)).collect();
            let doses = yearly_use(fluid, needs, |place| grades[place]);
            let choices = choices(fluid, &doses, &shop.currency, reference);
            let (choice, frugal) = (best_pack(&choices), cheapest_pack(&choices));
            let owned = stands_there(&shop.pots, fluid);
            let allowed = fluid.barred.is_none() && !refused(fluid) && (owned || fluid.always_there || choice.is_some());
            Weighed { fluid, grades, choice, frugal, owned, allowed }
        })
        .collect()
}

/// Whether some of a fluid is in one of these pots.
fn stands_there(pots: &[Pot], fluid: &Fluid) -> bool {
    pots.iter().any(|pot| pot.fluid == fluid.key && !pot.is_empty())
}

/// The needs of each task, in the order of the needs. Points where nothing is to be put are no task.
fn tasks(needs: &[Need]) -> Vec<Vec<usize>> {
    let mut tasks: Vec<(&str, Vec<usize>)> = Vec::new();
    for (place, need) in needs.iter().enumerate().filter(|(_, need)| need.nothing.is_none()) {
        match tasks.last_mut().filter(|(task, _)| *task == need.task) {
            Some((_, steps)) => steps.push(place),
            None => tasks.push((&need.task, vec![place])),
        }
    }
    tasks.into_iter().map(|(_, steps)| steps).collect()
}

fn instance(fluids: &[Weighed<'_>], needs: &[Need], tasks: &[Vec<usize>]) -> Instance {
    let candidates = fluids.iter().map(|weighed| Candidate {
        price: weighed.choice.map_or(0.0, |choice| choice.price),
        hazards: u32::try_from(weighed.fluid.hazards.statements.len()).unwrap_or(u32::MAX),
        owned: weighed.has_already(),
        allowed: weighed.allowed,
    });
    let with =
        |need: usize, grade: Grade| -> Vec<usize> { (0..fluids.len()).filter(|fluid| fluids[*fluid].grades[need] == grade).collect() };
    let step = |need: usize| ladder::Step { share: needs[need].share, right: with(need, Grade::Right), will_do: with(need, Grade::WillDo) };
    let jobs = tasks.iter().map(|steps| Task {
        weight: steps.first().map_or(0.0, |first| needs[*first].weight.value()),
        steps: steps.iter().map(|need| step(*need)).collect(),
    });
    Instance { fluids: candidates.collect(), jobs: jobs.collect() }
}

/// The same choice at the price of the smallest outlay that lasts a year: what counts when money is short.
fn frugal(mut instance: Instance, fluids: &[Weighed<'_>]) -> Instance {
    for (candidate, weighed) in instance.fluids.iter_mut().zip(fluids) {
        candidate.price = weighed.frugal.map_or(0.0, |choice| choice.price);
    }
    instance
}

impl Plan<'_> {
    /// Takes the pots as they stand now, for as long as that changes no choice: the same fluids stand there, however much of each. Otherwise
    /// nothing is taken, the answer is false, and the shop has to be planned anew.
    pub fn take_pots(&mut self, pots: &[Pot]) -> bool {
        let holds = self.fluids.iter().all(|weighed| weighed.owned == stands_there(pots, weighed.fluid));
        if holds {
            self.shop.pots = pots.to_vec();
        }
        holds
    }

    /// What the ladder was climbed on, with fluids and tasks as places in this plan's lists.
    #[must_use]
    pub fn instance(&self) -> Instance {
        instance(&self.fluids, &self.needs, &self.tasks)
    }

    /// The share of all that could be served which is served after each rung, from 0 to 1.
    #[must_use]
    pub fn served(&self, total: f64) -> f64 {
        let most: f64 = self.ladder.everything;
        if most > 0.0 { total / most } else { 1.0 }
    }
}
