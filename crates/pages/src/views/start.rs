//! The first visit: from nothing to a ladder with a handful of taps.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Form, State};
use axum::response::Response;
use fields::Kind;
use planner::needs::kinds;
use reference::Reference;
use shop::{ROOM_KEYS, Takes};
use store::{Change, Fault, SectionId, Value};

use crate::App;
use crate::form::section::fault;
use crate::frame::{Frame, form_html};
use crate::guard::login::to;
use crate::source::Unsound;
use crate::trouble::Trouble;
use crate::visitor::{Typed, Visitor};
use crate::words::sentence;

/// What many shops own before anybody plans; any other fluid is added to the cupboard later.
const OFTEN_OWNED: [&str; 12] = [
    "penetrating",
    "water-displacing-spray",
    "engine-30",
    "lithium-ep-2",
    "slideway-68",
    "hydraulic-32",
    "cutting-oil-inactive",
    "tapping-paste",
    "threadlock-medium",
    "acetone",
    "isopropanol",
    "mineral-spirits",
];
/// What is cut in most shops; the others are said with the work itself.
const OFTEN_CUT: [&str; 8] = ["mild-steel", "aluminium", "brass", "cast-iron", "stainless", "bronze", "tool-steel", "acetal"];
/// Supposed of a shop that does not say.
const USUALLY_CUT: [&str; 3] = ["mild-steel", "aluminium", "brass"];

#[derive(Template)]
#[template(path = "start.html")]
struct Page<'a> {
    frame: Frame,
    name: String,
    wrong: Vec<String>,
    machines: Vec<Offer<'a>>,
    sizes: Vec<Size<'a>>,
    heatings: Vec<(&'static str, bool)>,
    climates: Vec<(&'a str, &'a str, &'a str, bool)>,
    volume: String,
    currencies: Vec<(&'a str, bool)>,
    metals: Vec<Offer<'a>>,
    jobs: Vec<Offer<'a>>,
    owned: Vec<Offer<'a>>,
}

/// Something to tick: its word, its name, and whether it is ticked.
struct Offer<'a> {
    word: &'a str,
    name: String,
    about: &'a str,
    ticked: bool,
}

/// A size of a machine: the name of its field, what it is called, what is supposed, what was typed.
struct Size<'a> {
    field: String,
    label: String,
    usual: &'a str,
    value: String,
}

pub(crate) async fn page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        if !is_bare(app)? {
            return Ok(to(format!("{}/shop", app.settings.base_path.as_str())));
        }
        draw(app, visitor, None, Vec::new())
    })
    .await
}

/// Makes the shop of what was ticked.
pub(crate) async fn make(State(app): State<Arc<App>>, visitor: Visitor, Form(typed): Form<Typed>) -> Response {
    app.draw(visitor, move |app, visitor| {
        if !is_bare(app)? {
            return Ok(to(format!("{}/shop", app.settings.base_path.as_str())));
        }
        if typed.all("machine").next().is_none() && typed.all("job").next().is_none() {
            return draw(app, visitor, Some(&typed), vec!["Tick at least one machine, or some work.".to_owned()]);
        }
        let changes = changes(app.reference, &typed);
        match app.change(&changes)? {
            Ok(_) => Ok(to(format!("{}/ladder", app.settings.base_path.as_str()))),
            Err(faults) => draw(app, visitor, Some(&typed), faults.iter().map(|found| told(found, &changes)).collect()),
        }
    })
    .await
}

/// Whether nothing was said of the shop yet.
fn is_bare(app: &App) -> Result<bool, Trouble> {
    match app.source.now().ok_or_else(Trouble::only_kept)? {
        Ok(_) => Ok(false),
        Err(unsound) if matches!(*unsound, Unsound::Empty) => Ok(true),
        Err(unsound) => Err(Trouble::from(unsound)),
    }
}

/// A fault with the part it is in.
fn told(found: &Fault, changes: &[Change]) -> String {
    let part = found.change.and_then(|change| match changes.get(change) {
        Some(Change::Add { kind, says, .. }) => Some(says.first().map_or_else(|| kind.clone(), |(_, value)| value.plain())),
        _ => None,
    });
    let key = found.key.as_ref().map(|key| format!(", {key}")).unwrap_or_default();
    part.map_or_else(|| fault(found), |part| format!("{}{key}: {}", sentence(&part), fault(found)))
}

/// The field of a template's size.
fn field(template: &str, size: &str) -> String {
    format!("{template}.{size}")
}

fn changes(reference: &Reference, typed: &Typed) -> Vec<Change> {
    let text = |word: &str| Value::Text(word.to_owned());
    let mut changes = Vec::new();
    let mut add =
        |kind: &str, says: Vec<(String, Value)>| changes.push(Change::Add { parent: SectionId::WHOLE, kind: kind.to_owned(), says });
    let said = |keys: &[&str]| {
        let all = keys.iter().map(|key| ((*key).to_owned(), typed.joined(key))).filter(|(_, typed)| !typed.is_empty());
        all.map(|(key, typed)| (key, Value::Text(typed))).collect::<Vec<_>>()
    };
    let room = said(&["volume", "heating", "climate"]);
    if !room.is_empty() {
        add("room", room);
    }
    let mut operations: Vec<String> = Vec::new();
    for template in typed.all("machine").filter_map(|name| reference.template(name)) {
        let sizes = template.sizes.keys().map(|size| (size.clone(), typed.joined(&field(&template.name, size))));
        let sizes = sizes.filter(|(_, typed)| !typed.is_empty()).map(|(size, typed)| (size, Value::Text(typed)));
        add("machine", [("template".to_owned(), text(&template.name))].into_iter().chain(sizes).collect());
        for operation in &template.operations {
            if !operations.iter().any(|known| known == operation.word()) {
                operations.push(operation.word().to_owned());
            }
        }
    }
    let metals: Vec<String> = typed.all("metal").map(str::to_owned).collect();
    if !metals.is_empty() && !operations.is_empty() {
        let says = [
            ("job", text("cut")),
            ("name", text("cutting")),
            ("materials", Value::Words(metals)),
            ("operations", Value::Words(operations)),
            ("often", text("weekly")),
        ];
        add("work", says.map(|(key, value)| (key.to_owned(), value)).into());
    }
    for job in typed.all("job") {
        add("work", vec![("job".to_owned(), text(job))]);
    }
    for fluid in typed.all("own") {
        add("pot", vec![("fluid".to_owned(), text(fluid))]);
    }
    for (key, value) in said(&["name", "currency"]) {
        changes.push(Change::Say { section: SectionId::WHOLE, key, value });
    }
    changes
}

fn draw(app: &Arc<App>, visitor: &Visitor, typed: Option<&Typed>, wrong: Vec<String>) -> Result<Response, Trouble> {
    let reference = app.reference;
    let value = |name: &str| typed.map(|typed| typed.joined(name)).unwrap_or_default();
    let ticked = |name: &str, word: &str, usual: bool| typed.map_or(usual, |typed| typed.all(name).any(|ticked| ticked == word));
    let offer = |name: &str, word: &'static str, shown: String, usual: bool| Offer {
        word,
        name: shown,
        about: "",
        ticked: ticked(name, word, usual),
    };
    let heatings = ROOM_KEYS.iter().filter(|key| key.name == "heating").flat_map(|key| match key.takes {
        Takes::Word(words) => words(),
        _ => Vec::new(),
    });
    let sizes = reference.templates.values().flat_map(|template| {
        template.sizes.iter().map(|(size, usual)| {
            let field = field(&template.name, size);
            Size { label: format!("{}: {size}", template.title), usual, value: value(&field), field }
        })
    });
    // Metals are asked for cutting by themselves.
    let jobs = kinds().jobs.iter().filter(|kind| kind.name != "cut");
    let (heating, climate, currency) = (value("heating"), value("climate"), value("currency"));
    let page = Page {
        frame: Frame::bare(app, visitor, "Shop", "Your shop, to begin with"),
        name: value("name"),
        wrong,
        machines: reference
            .templates
            .values()
            .map(|template| Offer {
                word: &template.name,
                name: template.title.clone(),
                about: &template.about,
                ticked: ticked("machine", &template.name, false),
            })
            .collect(),
        sizes: sizes.collect(),
        heatings: heatings.map(|word| (word, heating == word)).collect(),
        climates: reference.climates.iter().map(|(key, of)| (key.as_str(), of.name.as_str(), of.about.as_str(), *key == climate)).collect(),
        volume: value("volume"),
        currencies: reference.currencies.keys().map(|key| (key.as_str(), *key == currency)).collect(),
        metals: OFTEN_CUT.iter().map(|key| offer("metal", key, reference.name_of(key), USUALLY_CUT.contains(key))).collect(),
        jobs: jobs
            .map(|kind: &&Kind| Offer {
                word: kind.name,
                name: sentence(kind.name),
                about: kind.about,
                ticked: ticked("job", kind.name, false),
            })
            .collect(),
        owned: OFTEN_OWNED.iter().map(|key| offer("own", key, reference.name_of(key), false)).collect(),
    };
    form_html(&page.wrong, &page)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_offered_is_known() {
        let reference = Reference::embedded();
        assert!(OFTEN_OWNED.iter().all(|key| reference.fluid(key).is_some()));
        assert!(OFTEN_CUT.iter().chain(&USUALLY_CUT).all(|key| reference.materials.contains_key(*key)));
    }
}
