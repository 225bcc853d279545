//! What the work takes: each job, step by step.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::response::Response;
use planner::report::StepRow;

use crate::App;
use crate::frame::{Frame, html};
use crate::visitor::Visitor;
use planner::words::{amount, gathered};

#[derive(Template)]
#[template(path = "work.html")]
struct Page<'a> {
    frame: Frame,
    jobs: Vec<Job<'a>>,
    /// Work can be added here.
    kept: bool,
}

struct Job<'a> {
    name: &'a str,
    steps: Vec<Step<'a>>,
    minds: Vec<(String, &'a str)>,
}

struct Step<'a> {
    row: &'a StepRow,
    need: &'a str,
    amount: String,
}

pub(crate) async fn page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        let shop = app.source.shop()?;
        let frame = Frame::new(app, visitor, "Shop", "What the work takes");
        let worked = app.plan(&shop, frame.units)?;
        let jobs = worked.report.work.iter().map(|job| Job {
            name: &job.job,
            steps: job
                .steps
                .iter()
                .map(|row| Step {
                    need: worked.need_of_step(&job.job, &row.step),
                    amount: row.dose.map_or_else(String::new, |dose| amount(dose, frame.units)),
                    row,
                })
                .collect(),
            minds: gathered(job.steps.iter().map(|step| (step.step.as_str(), step.mind.as_slice()))),
        });
        html(&Page { jobs: jobs.collect(), kept: app.source.is_kept(), frame })
    })
    .await
}
