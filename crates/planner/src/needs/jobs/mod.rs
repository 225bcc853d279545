//! Kinds of jobs: one file each, one line here.

mod common;
mod dip;

use formulas::working::{Notebook, Silent};
use reference::Reference;
use shop::{Job, Kind, Shop};

use crate::need::Need;
use crate::needs::damp::Damp;
use crate::needs::{Complaint, Working};
pub(crate) use common::{Bench, Step, Task};

/// A kind of job: what can be said about it, and how its tasks are worked out with and without keeping the working.
struct JobKind {
    kind: &'static Kind,
    tasks: fn(&Bench<'_>, &mut Silent) -> Result<Vec<Task>, Complaint>,
    explain: fn(&Bench<'_>, &mut Notebook) -> Result<Vec<Task>, Complaint>,
}

macro_rules! job_kinds {
    ($($module:ident),* $(,)?) => {
        $(mod $module;)*

        const ALL: &[JobKind] = &[$(JobKind { kind: &$module::KIND, tasks: $module::tasks::<Silent>, explain: $module::tasks::<Notebook> }),*];
        const KINDS: &[&Kind] = &[$(&$module::KIND),*];
    };
}

job_kinds! {
    cut,
    lock,
    retain,
    tighten,
    seal,
    bond,
    mark,
    spot,
    clean,
    solder,
    harden,
    finish,
    store,
    free,
    leak,
    abrade,
    derust,
}

/// All kinds of jobs.
pub(super) fn kinds() -> &'static [&'static Kind] {
    KINDS
}

/// The needs of one job: one for each step of each of its tasks.
pub(super) fn needs(shop: &Shop, job: &Job, reference: &Reference, damp: &Damp, working: Working) -> Result<Vec<Need>, Complaint> {
    let bench = Bench { shop, room: &shop.room, job, reference, damp };
    let kind = ALL
        .iter()
        .find(|kind| kind.kind.name == job.kind.name)
        .unwrap_or_else(|| unreachable!("the reader takes only kinds from this list"));
    let (tasks, notebook) = match working {
        Working::Dropped => ((kind.tasks)(&bench, &mut Silent)?, None),
        Working::Kept => {
            let mut notebook = Notebook::default();
            ((kind.explain)(&bench, &mut notebook)?, Some(notebook))
        }
    };
    Ok(tasks.into_iter().flat_map(|task| common::finish(&bench, task, notebook.as_ref())).collect())
}
