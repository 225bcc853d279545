//! The same answers as JSON for programs, to be read only, and their description as OpenAPI 3.1.

use std::sync::Arc;

use axum::extract::State;
use axum::http::header::CONTENT_TYPE;
use axum::response::{IntoResponse, Response};
use keep::LogRow;
use planner::report::Report;
use planner::round::{Cupboard, Round};
use schemars::SchemaGenerator;
use schemars::generate::SchemaSettings;
use serde::Serialize;
use serde_json::{Value, json};
use store::{Page, Store};

use crate::App;
use crate::trouble::Trouble;
use crate::visitor::Visitor;
use crate::worked::Day;

/// As many entries of the log are given at once.
const ENTRIES: u32 = 1000;

/// The one question that a shop file answers, too.
const PLAN: &str = "/api/plan";

fn answer(of: &impl Serialize) -> Result<Response, Trouble> {
    let text = serde_json::to_string_pretty(of).map_err(|error| Trouble::Fault(error.to_string()))?;
    Ok(([(CONTENT_TYPE, "application/json")], text).into_response())
}

/// The plan without wishes.
pub(crate) async fn plan(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        let shop = app.source.shop()?;
        answer(&app.plan(&shop, visitor.units.unwrap_or(shop.units))?.report)
    })
    .await
}

/// What is due today.
pub(crate) async fn round(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| of_day(app, visitor, |day| answer(&day.round))).await
}

/// How the cupboard stands today.
pub(crate) async fn cupboard(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| of_day(app, visitor, |day| answer(&day.cupboard))).await
}

fn of_day(app: &App, visitor: &Visitor, with: impl FnOnce(&Day) -> Result<Response, Trouble>) -> Result<Response, Trouble> {
    let shop = app.source.shop()?;
    let worked = app.plan(&shop, visitor.units.unwrap_or(shop.units))?;
    match worked.day.as_ref().ok_or_else(Trouble::only_kept)? {
        Ok(day) => with(day),
        Err(said) => Err(Trouble::Unanswered(said.clone())),
    }
}

/// The newest entries of the log.
pub(crate) async fn log(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        let units = visitor.units.unwrap_or(app.source.shop()?.units);
        let read = |store: &mut Store| {
            let found = store.log(Page { count: ENTRIES, ..Page::default() })?;
            found.iter().map(|logged| keep::row(store, logged, units)).collect::<Result<Vec<LogRow>, _>>()
        };
        answer(&app.stored(read)?)
    })
    .await
}

/// What can be asked, and what comes back.
pub(crate) async fn description(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, _| answer(&described(app.settings.base_path.as_str()))).await
}

fn described(base: &str) -> Value {
    let settings = SchemaSettings::draft2020_12().with(|settings| {
        settings.definitions_path = "/components/schemas".into();
        settings.meta_schema = None;
    });
    let mut schemas = settings.into_generator();
    let paths = [
        (PLAN, "The plan of the shop without wishes", schemas.subschema_for::<Report>()),
        ("/api/round", "What is due today at the machines of a kept shop", schemas.subschema_for::<Round>()),
        ("/api/cupboard", "How the cupboard of a kept shop stands today, and what to buy again", schemas.subschema_for::<Cupboard>()),
        ("/api/log", "The newest entries of the log of a kept shop, newest first", schemas.subschema_for::<Vec<LogRow>>()),
    ];
    let path = |(path, about, schema): (&str, &str, schemars::Schema)| {
        let mut answers = json!({
            "200": { "description": about, "content": { "application/json": { "schema": schema } } },
            "303": { "description": "Nobody has come in, or nothing was said of the shop yet: where to go first" },
            "403": { "description": "It came through a proxy that Gallipot was not told of" },
            "421": { "description": "Gallipot does not answer to this name" },
            "422": { "description": "The shop or the clock is not sound; a page says why" },
            "429": { "description": "Too many questions; Retry-After says how long to wait" },
            "500": { "description": "The program's own fault; what happened stands where it was started" },
            "503": { "description": "The shop could not be read just now, or it took too long; ask again later" },
        });
        if path != PLAN {
            answers["404"] = json!({ "description": "Only a kept shop answers this" });
        }
        (path.to_owned(), json!({ "get": { "summary": about, "operationId": path.trim_start_matches("/api/"), "responses": answers } }))
    };
    let paths: serde_json::Map<String, Value> = paths.into_iter().map(path).collect();
    json!({
        "openapi": "3.1.0",
        "info": { "title": "Gallipot", "version": env!("CARGO_PKG_VERSION"), "description": "A shop as its pages show it, for reading only." },
        "servers": [{ "url": if base.is_empty() { "/" } else { base } }],
        "paths": paths,
        "components": { "schemas": definitions(&mut schemas) },
    })
}

fn definitions(schemas: &mut SchemaGenerator) -> serde_json::Map<String, Value> {
    schemas.take_definitions(true)
}
