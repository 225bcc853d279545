//! The plan as plain data: the JSON that `plan --json` prints, and what tables are drawn from.

mod rows;

use handling::cautions::{self, Caution, Kept};
use reference::Fluid;
use units::{Amount, Digits, Quantity, System, Volume, YEAR, in_celsius, show_number};

use crate::chart::{Serving, is_point};
use crate::demand::Test;
use crate::need::{Dose, Every, Need, Place};
use crate::plan::Plan;
use crate::season::Season;
use crate::surroundings::room_air;
use crate::use_rate::{YearlyUse, of_pack, yearly_uses};
use crate::verdict::Grade;

pub use rows::{
    AskRow, AssumptionRow, BudgetRow, ChartRow, EveryRow, NeedRow, PackRow, Report, RungRow, SeasonRow, ShopRow, StepRow, UnservedRow,
    UseRow, WorkRow,
};

impl Plan<'_> {
    /// The plan as plain data, with quantities in words in this system of units.
    #[must_use]
    pub fn report(&self, units: System) -> Report {
        let points = |serving: &&Serving| is_point(&self.needs[serving.need]);
        Report {
            shop: self.shop_row(),
            assumptions: self.assumptions(),
            needs: self.needs.iter().map(|need| self.need_row(need, units)).collect(),
            ladder: (0..self.ladder.rungs.len()).map(|rung| self.rung_row(rung, units)).collect(),
            budget: self.budget_row(units),
            chart: self.servings.iter().filter(points).filter_map(|serving| self.chart_row(serving)).collect(),
            work: self.work_rows(),
            use_a_year: self.uses(units),
            seasons: self.seasons.iter().map(|season| self.season_row(*season)).collect(),
            unserved: self.unserved(),
            cautions: self.cautions(units),
        }
    }

    fn shop_row(&self) -> ShopRow {
        let room = &self.shop.room;
        ShopRow {
            name: self.shop.name.clone(),
            currency: self.shop.currency.clone(),
            machines: self.shop.machines.iter().map(|machine| machine.name.clone()).collect(),
            work: self.shop.work.iter().map(|job| job.name.clone()).collect(),
            air_celsius: [room.coldest, room.usual, room.hottest].map(|temperature| round(in_celsius(temperature))),
        }
    }

    fn assumptions(&self) -> Vec<AssumptionRow> {
        self.shop.assumptions.iter().map(AssumptionRow::from).collect()
    }

    fn need_row(&self, need: &Need, units: System) -> NeedRow {
        let ((machine, point), (job, step)) = match &need.place {
            Place::Point { machine, point } => ((Some(machine.clone()), Some(point.clone())), (None, None)),
            Place::Step { job, step } => ((None, None), (Some(job.clone()), Some(step.clone()))),
        };
        let ask = |demand: &crate::demand::Demand| AskRow {
            what: demand.what.to_owned(),
            asked: demand.asked(self.reference, units),
            why: demand.why.to_string(),
            source: demand.source.to_owned(),
        };
        NeedRow {
            id: need.id.clone(),
            machine,
            point,
            job,
            step,
            kind: need.kind.to_owned(),
            weight: round(need.weight.value() * need.share),
            asks: need.demands.iter().map(ask).collect(),
            nothing: need.nothing.as_ref().map(ToString::to_string),
            dose: need.rations.first().map(|ration| rounded(ration.dose)),
            every: need.rations.first().map(|ration| every_row(&ration.every)),
        }
    }

    fn rung_row(&self, place: usize, units: System) -> RungRow {
        let rung = &self.ladder.rungs[place];
        let weighed = &self.fluids[rung.fluid];
        let served = rung.newly_served.iter().flat_map(|task| &self.tasks[*task]);
        RungRow {
            rung: place + 1,
            fluid: weighed.fluid.key.clone(),
            name: weighed.fluid.name.clone(),
            pack: weighed.choice.map(|choice| PackRow {
                size: choice.pack.size.show(units),
                price: cents(choice.price),
                currency: self.shop.currency.clone(),
                year: choice.pack.year,
                packs_a_year: round(choice.packs_a_year),
                yearly_cost: cents(choice.yearly_cost),
            }),
            gain: round(rung.gain),
            total: round(rung.total),
            best_possible: round(rung.best_possible),
            gap: round(rung.gap),
            right: rung.right,
            will_do: rung.will_do,
            needs: served.map(|need| self.needs[*need].id.clone()).collect(),
            betters: self.bettered(place).into_iter().map(|need| self.needs[need].id.clone()).collect(),
            holds_in: round(rung.holds_in),
            opens_with_next: rung.opens_with_next,
        }
    }

    /// The needs that something already served and that this rung makes right.
    fn bettered(&self, place: usize) -> Vec<usize> {
        let rung = &self.ladder.rungs[place];
        let before: Vec<usize> = (0..self.fluids.len())
            .filter(|fluid| self.fluids[*fluid].allowed && self.fluids[*fluid].has_already())
            .chain(self.ladder.rungs[..place].iter().map(|rung| rung.fluid))
            .collect();
        let fluid = &self.fluids[rung.fluid];
        let best = |need: usize| before.iter().map(|fluid| self.fluids[*fluid].grades[need]).min();
        let betters = |need: &usize| fluid.grades[*need] == Grade::Right && best(*need) == Some(Grade::WillDo);
        let served = |steps: &[usize]| steps.iter().all(|need| best(*need).is_some_and(Grade::serves));
        // Task by task, which is the order of the needs: each that asks for anything stands in one task.
        let bettered = self.tasks.iter().flat_map(|steps| steps.iter().copied().filter(betters).filter(|_| served(steps)));
        bettered.collect()
    }

    fn budget_row(&self, units: System) -> Option<BudgetRow> {
        let best = self.within_budget.as_ref()?;
        let bought = best.set.iter().map(|place| &self.fluids[*place]).filter(|weighed| !weighed.has_already());
        Some(BudgetRow {
            budget: self.budget?,
            cost: cents(bought.clone().filter_map(|weighed| Some(weighed.frugal?.price)).sum()),
            packs: bought.clone().map(|weighed| weighed.frugal.map_or_else(String::new, |choice| choice.pack.size.show(units))).collect(),
            fluids: bought.map(|weighed| weighed.fluid.key.clone()).collect(),
            total: round(best.value),
            gap: round(best.gap),
        })
    }

    fn chart_row(&self, serving: &Serving) -> Option<ChartRow> {
        let need = &self.needs[serving.need];
        let Place::Point { machine, point } = &need.place else { return None };
        let fluid = serving.fluid.map(|place| self.fluids[place].fluid);
        Some(ChartRow {
            machine: machine.clone(),
            point: point.clone(),
            fluid: fluid.map(|fluid| fluid.key.clone()),
            name: fluid.map(|fluid| fluid.name.clone()),
            dose: serving.ration.as_ref().map(|ration| rounded(ration.dose)),
            how: serving.how.clone(),
            every: serving.ration.as_ref().map(|ration| every_row(&ration.every)),
            grade: serving.grade,
            reason: serving.reason.clone(),
            mind: minds(need, fluid),
        })
    }

    fn work_rows(&self) -> Vec<WorkRow> {
        let mut rows: Vec<WorkRow> = Vec::new();
        for serving in &self.servings {
            let need = &self.needs[serving.need];
            let Place::Step { job, step } = &need.place else { continue };
            let fluid = serving.fluid.map(|place| self.fluids[place].fluid);
            let row = StepRow {
                step: step.clone(),
                fluid: fluid.map(|fluid| fluid.key.clone()),
                name: fluid.map(|fluid| fluid.name.clone()),
                dose: serving.ration.as_ref().map(|ration| rounded(ration.dose)),
                how: serving.how.clone(),
                grade: serving.grade,
                reason: serving.reason.clone(),
                mind: minds(need, fluid),
            };
            match rows.last_mut().filter(|last| last.job == *job) {
                Some(last) => last.steps.push(row),
                None => rows.push(WorkRow { job: job.clone(), steps: vec![row] }),
            }
        }
        rows
    }

    fn uses(&self, units: System) -> Vec<UseRow> {
        let row = |yearly: &YearlyUse| {
            let weighed = &self.fluids[yearly.fluid];
            let pack = weighed.choice.map(|choice| choice.pack.size);
            let packs = pack.map(|size| of_pack(yearly.amount.amount(), size, weighed.fluid)).filter(|packs| *packs > 0.0);
            UseRow {
                fluid: weighed.fluid.key.clone(),
                name: weighed.fluid.name.clone(),
                amount: rounded(yearly.amount),
                pack: pack.map(|size| size.show(units)),
                lasts_years: packs.map(|packs| round(1.0 / packs)),
                keeps_years: round(weighed.fluid.shelf.opened.base() / YEAR),
            }
        };
        yearly_uses(&self.servings, &self.fluids, &self.kept).iter().map(row).collect()
    }

    /// What to mind about the fluids that stand there, wanted or not, and those to be bought; as much of each as it is.
    fn cautions(&self, units: System) -> Vec<Caution> {
        let room = &self.shop.room;
        let unwanted = (0..self.fluids.len()).filter(|place| self.fluids[*place].owned && !self.kept.contains(place));
        let kept: Vec<Kept<'_>> = self.kept.iter().copied().chain(unwanted).map(|place| self.kept_there(place)).collect();
        let place = cautions::Place { room: room_air(room), coldest: room.coldest, hottest: room.hottest, units };
        cautions::cautions(&kept, &place, self.reference)
    }

    fn kept_there(&self, place: usize) -> Kept<'_> {
        let weighed = &self.fluids[place];
        let fluid = weighed.fluid;
        let volume = |amount: Amount| amount.in_volume(fluid.density.value).unwrap_or(Volume::from_base(0.0));
        let pots = || self.shop.pots.iter().filter(|pot| pot.fluid == fluid.key && !pot.is_empty());
        let amount = if weighed.owned {
            pots().filter_map(|pot| pot.left.or(pot.size)).map(volume).sum()
        } else {
            weighed.choice.map_or(Volume::from_base(0.0), |choice| volume(choice.pack.size))
        };
        let served = self.servings.iter().filter(|serving| serving.fluid == Some(place));
        let uses = served.flat_map(|serving| &self.needs[serving.need].demands).filter_map(|demand| match &demand.test {
            Test::SafeAir(spent) => spent.used(fluid),
            _ => None,
        });
        // What is to be bought is one pack.
        let pots = if weighed.owned { pots().count() } else { 1 };
        Kept { fluid, pots, amount, used: uses.max_by(|one, other| one.amount.base().total_cmp(&other.amount.base())) }
    }

    fn season_row(&self, season: Season) -> SeasonRow {
        let need = &self.needs[season.need];
        let key = |fluid: usize| self.fluids[fluid].fluid.key.clone();
        SeasonRow { need: need.id.clone(), place: need.place.words(), cold: key(season.cold), warm: key(season.warm) }
    }

    fn unserved(&self) -> Vec<UnservedRow> {
        let missing = self.servings.iter().filter(|serving| serving.fluid.is_none() && self.needs[serving.need].nothing.is_none());
        missing
            .map(|serving| {
                let need = &self.needs[serving.need];
                UnservedRow { need: need.id.clone(), place: need.place.words(), why: serving.reason.clone() }
            })
            .collect()
    }
}

/// What to mind at a place, and how what goes there is mixed.
fn minds(need: &Need, fluid: Option<&Fluid>) -> Vec<String> {
    let percent = |share: f64| show_number(share * 100.0, Digits::Significant(2));
    let mixed = fluid.and_then(|fluid| Some((&fluid.name, fluid.dilution.as_ref()?.value)));
    let mixed = mixed.map(|(name, share)| {
        let (low, likely, high) = (percent(share.low), percent(share.likely), percent(share.high));
        format!("The amount is of the mix: {name} in water, {likely} % ({low} to {high} %).")
    });
    need.mind.iter().map(|(text, _)| text.to_string()).chain(mixed).collect()
}

fn every_row(every: &Every) -> EveryRow {
    EveryRow {
        running_hours: every.running_hours.map(round),
        days: every.days.map(round),
        at_latest: every.at_latest.map(round),
        by_calendar: every.by_calendar,
        with: every.with,
    }
}

fn rounded(dose: Dose) -> Dose {
    Dose { low: round(dose.low), likely: round(dose.likely), high: round(dose.high), unit: dose.unit }
}

/// Three significant digits: more would be false certainty.
fn round(value: f64) -> f64 {
    if value == 0.0 || !value.is_finite() {
        return value;
    }
    let scale = 10_f64.powf(2.0 - value.abs().log10().floor());
    (value * scale).round() / scale
}

fn cents(value: f64) -> f64 {
    (value * 100.0).round() / 100.0
}
