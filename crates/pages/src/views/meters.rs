//! The hour meters: read, so that what is due goes by hours that were run.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Form, State};
use axum::response::Response;
use keep::hours;
use store::What;
use units::Time;

use super::today::after;
use crate::App;
use crate::frame::{Frame, form_html};
use crate::guard::login::to;
use crate::trouble::Trouble;
use crate::visitor::{Typed, Visitor};
use crate::words::in_words;

#[derive(Template)]
#[template(path = "meters.html")]
struct Page {
    frame: Frame,
    /// Each machine with its number, what its meter showed last, and what was typed.
    machines: Vec<(i64, String, String, String)>,
    wrong: Vec<(i64, String)>,
}

impl Page {
    fn is_wrong(&self, machine: &i64) -> bool {
        self.wrong.iter().any(|(at, _)| at == machine)
    }
}

/// The hour meters, to be read.
pub(crate) async fn page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| form(app, visitor, &Typed::default(), Vec::new())).await
}

fn form(app: &Arc<App>, visitor: &Visitor, typed: &Typed, wrong: Vec<(i64, String)>) -> Result<Response, Trouble> {
    let now = app.kept_now()?;
    let row = |machine: &shop::Machine| {
        let section = now.described.section(&machine.at)?;
        let last =
            now.state.meters.get(&section).map_or_else(String::new, |last| format!("{} h on {}", hours(last.hours), last.when.day()));
        Some((section.0, machine.name.clone(), last, typed.joined(&section.0.to_string())))
    };
    let machines = now.shop.machines.iter().filter_map(row).collect();
    let page = Page { frame: Frame::new(app, visitor, "Today", "Hour meters"), machines, wrong };
    form_html(&page.wrong, &page)
}

/// Writes what the hour meters show.
pub(crate) async fn read(State(app): State<Arc<App>>, visitor: Visitor, Form(typed): Form<Typed>) -> Response {
    app.draw(visitor, move |app, visitor| {
        let state = app.kept_now()?;
        let (mut read, mut wrong) = (Vec::new(), Vec::new());
        for machine in &state.shop.machines {
            let Some(section) = state.described.section(&machine.at) else { continue };
            let text = typed.joined(&section.0.to_string());
            if text.is_empty() {
                continue;
            }
            let number = if text.parse::<f64>().is_ok() { format!("{text} h") } else { text };
            match units::parse::<Time>(&number) {
                Err(error) => wrong.push((section.0, in_words(&error))),
                Ok(shown) => {
                    let before = state.state.meters.get(&section).filter(|last| last.hours > shown);
                    match before.filter(|_| typed.joined(&format!("new-{}", section.0)).is_empty()) {
                        Some(last) => wrong.push((
                            section.0,
                            format!("It showed {} h on {}. Tick below if it is a new meter.", hours(last.hours), last.when.day()),
                        )),
                        None => read.push(What::MeterRead { machine: section, hours: shown }),
                    }
                }
            }
        }
        if !wrong.is_empty() {
            return form(app, visitor, &typed, wrong);
        }
        let (now, by) = (app.now(), visitor.said());
        let written = app.kept(|kept| kept.write_all(&read, &by, &now))?;
        Ok(to(after(app, &written)))
    })
    .await
}
