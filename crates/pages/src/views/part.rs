//! A part of the kept shop as a form: to change it, to take it out, to add another.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Form, Path, State};
use axum::response::Response;
use planner::needs::kinds;
use reference::Reference;
use shop::Shop;
use store::{Change, Fault, SectionId, SectionRow, StoreError, Value};

use crate::App;
use crate::form::section::{Choices, MAKER, Part, Question, fault, supposed, written};
use crate::form::{Control, Input, List, lists};
use crate::frame::{Frame, encoded, form_html, html};
use crate::guard::login::to;
use crate::trouble::Trouble;
use crate::visitor::{Typed, Visitor};
use crate::words::sentence;

#[derive(Template)]
#[template(path = "part.html")]
struct Page<'a> {
    frame: Frame,
    action: String,
    /// Where to go without changing anything.
    back: String,
    /// Its own address, where it can be moved and taken out.
    own: Option<String>,
    /// Nothing was kept.
    refused: bool,
    points: Vec<(String, String)>,
    add_point: Option<String>,
    wrong: Vec<String>,
    controls: Vec<Control>,
    lists: Vec<List<'a>>,
}

#[derive(Template)]
#[template(path = "choose.html")]
struct Choose {
    frame: Frame,
    /// What is chosen, with its address and what it is.
    choices: Vec<(String, String, String)>,
}

/// A part to be shown as a form: one that is there, or one to be added.
struct Target {
    parent: SectionId,
    kind: String,
    /// None of one to be added.
    section: Option<SectionRow>,
    machine: Option<SectionRow>,
    part: Part,
    /// What is said of one to be added before anything is typed.
    begins: Vec<(String, Value)>,
}

impl Target {
    /// What its form asks. What the maker says of a point is said once the point is there.
    fn questions(&self) -> Vec<Question> {
        let mut questions = self.part.questions();
        if self.section.is_none() && !matches!(self.part, Part::Point { of_template: true, .. }) {
            questions.retain(|question| !question.name.starts_with(MAKER));
        }
        questions
    }
}

/// What is wrong: of keys, and of the whole.
type Wrong = Vec<(Option<String>, String)>;

/// The form of a part that is there.
pub(crate) async fn page(State(app): State<Arc<App>>, Path(id): Path<i64>, visitor: Visitor) -> Response {
    app.draw(visitor, move |app, visitor| {
        let target = existing(app, SectionId(id))?;
        form(app, visitor, &target, None, &Wrong::new())
    })
    .await
}

/// Changes a part that is there.
pub(crate) async fn change(State(app): State<Arc<App>>, Path(id): Path<i64>, visitor: Visitor, Form(typed): Form<Typed>) -> Response {
    app.draw(visitor, move |app, visitor| save(app, visitor, &existing(app, SectionId(id))?, &typed)).await
}

/// The room or the shop itself, which there is one of.
pub(crate) async fn only(State(app): State<Arc<App>>, Path(kind): Path<String>, visitor: Visitor) -> Response {
    app.draw(visitor, move |app, visitor| form(app, visitor, &the_only(app, &kind)?, None, &Wrong::new())).await
}

/// Changes the room or the shop itself.
pub(crate) async fn change_only(
    State(app): State<Arc<App>>,
    Path(kind): Path<String>,
    visitor: Visitor,
    Form(typed): Form<Typed>,
) -> Response {
    app.draw(visitor, move |app, visitor| save(app, visitor, &the_only(app, &kind)?, &typed)).await
}

/// The form of a part to be added; what kind of one is chosen first.
pub(crate) async fn blank(State(app): State<Arc<App>>, Path(kind): Path<String>, visitor: Visitor) -> Response {
    app.draw(visitor, move |app, visitor| match new(app, visitor, &kind)? {
        Some(target) => form(app, visitor, &target, None, &Wrong::new()),
        None => choose(app, visitor, &kind),
    })
    .await
}

/// Adds a part.
pub(crate) async fn add(State(app): State<Arc<App>>, Path(kind): Path<String>, visitor: Visitor, Form(typed): Form<Typed>) -> Response {
    app.draw(visitor, move |app, visitor| match new(app, visitor, &kind)? {
        Some(Target { part: Part::Point { of_template: true, .. }, parent, begins, .. }) => {
            let name = begins.iter().find(|(key, _)| key == "name").map(|(_, value)| value.plain()).unwrap_or_default();
            let point = app.stored(|store| store.point(parent, &name))?;
            save(app, visitor, &existing(app, point)?, &typed)
        }
        Some(target) => save(app, visitor, &target, &typed),
        None => choose(app, visitor, &kind),
    })
    .await
}

/// Takes a part out.
pub(crate) async fn remove(State(app): State<Arc<App>>, Path(id): Path<i64>, visitor: Visitor) -> Response {
    app.draw(visitor, move |app, visitor| {
        let target = existing(app, SectionId(id))?;
        match app.change(&[Change::Remove { section: SectionId(id) }])? {
            Ok(_) => Ok(to(after(app, &target))),
            Err(faults) => form(app, visitor, &target, None, &faults.iter().map(|found| (None, fault(found))).collect()),
        }
    })
    .await
}

/// Puts a part before or behind its neighbour among those of its kind.
pub(crate) async fn shift(State(app): State<Arc<App>>, Path(id): Path<i64>, visitor: Visitor, Form(typed): Form<Typed>) -> Response {
    app.draw(visitor, move |app, _| {
        let target = existing(app, SectionId(id))?;
        let all = section(app, target.parent)?.inside;
        let mut alike = Vec::new();
        for one in &all {
            if section(app, *one)?.kind == target.kind {
                alike.push(*one);
            }
        }
        let here = alike.iter().position(|one| one.0 == id);
        let before = match (typed.joined("to").as_str(), here) {
            ("up", Some(here)) => here.checked_sub(1).map(|before| Some(alike[before])),
            // Before whatever stands behind the next of its kind.
            ("down", Some(here)) => alike.get(here + 1).map(|next| all.iter().copied().skip_while(|one| one != next).nth(1)),
            _ => return Err(Trouble::NotFound("A part is moved up or down.".to_owned())),
        };
        if let Some(before) = before {
            app.change(&[Change::Move { section: SectionId(id), before }])?.map_err(|faults| Trouble::from(StoreError::Refused(faults)))?;
        }
        Ok(to(after(app, &target)))
    })
    .await
}

fn gone() -> Trouble {
    Trouble::NotFound("There is no such part of the shop any more. Another may have taken it out.".to_owned())
}

/// A section of the store, be it gone.
fn section(app: &App, id: SectionId) -> Result<SectionRow, Trouble> {
    app.source.store(|store| store.section(id)).ok_or_else(Trouble::only_kept)?.map_err(|error| match error {
        StoreError::NoSection { .. } => gone(),
        error => Trouble::from(error),
    })
}

fn existing(app: &App, id: SectionId) -> Result<Target, Trouble> {
    let found = section(app, id)?;
    if found.gone {
        return Err(gone());
    }
    let machine = found.parent.filter(|_| found.kind == "point").map(|parent| section(app, parent)).transpose()?;
    let part = Part::of(&found, machine.as_ref(), app.reference).ok_or_else(gone)?;
    let parent = found.parent.unwrap_or(SectionId::WHOLE);
    Ok(Target { parent, kind: found.kind.clone(), machine, part, begins: Vec::new(), section: Some(found) })
}

fn the_only(app: &App, kind: &str) -> Result<Target, Trouble> {
    if kind == "shop" {
        return existing(app, SectionId::WHOLE);
    }
    if kind != "room" {
        return Err(Trouble::NotFound(format!("A shop has no “{kind}” to be changed.")));
    }
    for id in section(app, SectionId::WHOLE)?.inside {
        if section(app, id)?.kind == "room" {
            return existing(app, id);
        }
    }
    Ok(Target { parent: SectionId::WHOLE, kind: "room".to_owned(), section: None, machine: None, part: Part::Room, begins: Vec::new() })
}

/// What is to be added, by the question in the address; none where it does not say yet.
fn new(app: &App, visitor: &Visitor, kind: &str) -> Result<Option<Target>, Trouble> {
    let said = |key: &str| visitor.typed(key).map(|value| (key.to_owned(), Value::Text(value.to_owned())));
    let machine = match (kind, visitor.typed("machine").map(str::parse)) {
        ("point", Some(Ok(machine))) => Some(section(app, SectionId(machine))?),
        ("point", _) => return Err(Trouble::NotFound("A point belongs to a machine. Add it from the machine's own page.".to_owned())),
        _ => None,
    };
    let unknown = || Trouble::NotFound(format!("Nothing called “{kind}” can be added to a shop."));
    let begins: Vec<(String, Value)> = match kind {
        "machine" => said("template").into_iter().collect(),
        "work" => said("job").into_iter().collect(),
        "pot" => said("fluid").into_iter().collect(),
        "point" => ["name", "kind"].into_iter().filter_map(said).collect(),
        _ => return Err(unknown()),
    };
    if begins.is_empty() && kind != "pot" {
        return Ok(None);
    }
    let row =
        SectionRow { id: SectionId::WHOLE, kind: kind.to_owned(), parent: None, gone: false, said: begins.clone(), inside: Vec::new() };
    let part = Part::of(&row, machine.as_ref(), app.reference).ok_or_else(unknown)?;
    let parent = machine.as_ref().map_or(SectionId::WHOLE, |machine| machine.id);
    Ok(Some(Target { parent, kind: kind.to_owned(), section: None, machine, part, begins }))
}

/// What kind of part to add.
fn choose(app: &Arc<App>, visitor: &Visitor, kind: &str) -> Result<Response, Trouble> {
    let base = app.settings.base_path.as_str();
    let choices = match kind {
        "machine" => {
            let of = |(name, template): (&String, &reference::Template)| {
                (template.title.clone(), format!("{base}/add/machine?template={}", encoded(name)), template.about.clone())
            };
            app.reference.templates.iter().map(of).collect()
        }
        "work" => {
            let of =
                |kind: &&fields::Kind| (sentence(kind.name), format!("{base}/add/work?job={}", encoded(kind.name)), sentence(kind.about));
            kinds().jobs.iter().map(of).collect()
        }
        _ => {
            let machine = visitor.typed("machine").unwrap_or_default();
            let of = |kind: &&fields::Kind| {
                let to = format!("{base}/add/point?machine={}&kind={}", encoded(machine), encoded(kind.name));
                (sentence(kind.name), to, sentence(kind.about))
            };
            kinds().points.iter().map(of).collect()
        }
    };
    html(&Choose { frame: Frame::new(app, visitor, "Shop", title(kind)), choices })
}

fn title(kind: &str) -> &'static str {
    match kind {
        "machine" => "Add a machine",
        "work" => "Add work",
        "pot" => "Add a pot",
        "point" => "Add a point",
        "room" => "The room",
        _ => "The shop",
    }
}

/// The page with the form of a part: with what was typed, else with what was said.
fn form(app: &Arc<App>, visitor: &Visitor, target: &Target, typed: Option<&Typed>, wrong: &Wrong) -> Result<Response, Trouble> {
    let shop = app.source.shop().ok();
    let base = app.settings.base_path.as_str();
    let template = match target.part {
        Part::Machine(template) => template,
        _ => None,
    };
    let choices = Choices { reference: app.reference, template };
    let place = place(target);
    let said = said(app, target)?;
    let control = |question: &Question| {
        let value = match typed {
            Some(typed) => typed.joined(&question.name),
            None => said.iter().find(|(name, _)| *name == question.name).map(|(_, value)| written(value)).unwrap_or_default(),
        };
        let supposed = shop.as_deref().and_then(|shop: &Shop| supposed(shop, &place, &question.name)).or_else(|| question.default());
        let supposed = supposed.or_else(|| target.part.grown(&question.name).then_some(("as the template has it", "")));
        let wrong = wrong.iter().find(|(key, _)| key.as_deref() == Some(&question.name)).map(|(_, said)| said.clone());
        question.control(&value, supposed, wrong, &choices)
    };
    let controls: Vec<Control> = target.questions().iter().map(control).collect();
    let asked = |key: &str| controls.iter().any(|control| control.name == key);
    let general = wrong.iter().filter(|(key, _)| !key.as_deref().is_some_and(asked)).map(|(_, said)| said.clone()).collect();
    let name = match &target.section {
        Some(section) if section.kind == "point" => place.clone(),
        Some(section) if !section.kind.is_empty() && section.kind != "room" => section.name(),
        _ => target.begins.iter().find(|(key, _)| key == "name").map_or_else(|| title(&target.kind).to_owned(), |_| place.clone()),
    };
    let action = match &target.section {
        Some(section) => format!("{base}/part/{}", section.id.0),
        None => format!("{base}{}", visitor.at),
    };
    let here = if target.kind == "pot" { "Cupboard" } else { "Shop" };
    let id = target.section.as_ref().map(|section| section.id.0).filter(|_| !matches!(target.kind.as_str(), "" | "room"));
    let machine = id.filter(|_| target.kind == "machine");
    let refused = !wrong.is_empty();
    let page = Page {
        refused,
        action,
        back: after(app, target),
        own: id.map(|id| format!("{base}/part/{id}")),
        points: machine.map_or_else(Vec::new, |_| points(app, target)),
        add_point: machine.map(|id| format!("{base}/add/point?machine={id}")),
        wrong: general,
        lists: lists(&controls, app.reference),
        controls,
        frame: Frame::new(app, visitor, here, name),
    };
    form_html(wrong, &page)
}

/// The points of a machine with the addresses of their forms.
fn points(app: &App, target: &Target) -> Vec<(String, String)> {
    let Some(Ok(kept)) = app.source.now() else { return Vec::new() };
    let Some(section) = &target.section else { return Vec::new() };
    let machine = kept.shop.machines.iter().find(|machine| kept.described.section(&machine.at) == Some(section.id));
    let base = app.settings.base_path.as_str();
    let address = |name: &str| match kept.described.point(section.id, name) {
        Some(point) => format!("{base}/part/{}", point.0),
        None => format!("{base}/add/point?machine={}&name={}", section.id.0, encoded(name)),
    };
    machine.map_or_else(Vec::new, |machine| machine.points.iter().map(|point| (point.name.clone(), address(&point.name))).collect())
}

/// What the reader calls the place of a part, where it supposes something there.
fn place(target: &Target) -> String {
    let begun = |key: &str| target.begins.iter().find(|(known, _)| known == key).map(|(_, value)| value.plain());
    let name = || target.section.as_ref().map(SectionRow::name).or_else(|| begun("name")).unwrap_or_default();
    match target.kind.as_str() {
        "" => "shop".to_owned(),
        "room" => "room".to_owned(),
        "point" => target.machine.as_ref().map_or_else(String::new, |machine| format!("{} · {}", machine.name(), name())),
        _ => name(),
    }
}

/// What is said in a part, and in the maker's instruction that stands in it.
fn said(app: &App, target: &Target) -> Result<Vec<(String, Value)>, Trouble> {
    let Some(section) = &target.section else { return Ok(target.begins.clone()) };
    let mut said = section.said.clone();
    if let Some(maker) = maker(app, section)? {
        said.extend(maker.said.into_iter().map(|(key, value)| (format!("{MAKER}{key}"), value)));
    }
    Ok(said)
}

fn maker(app: &App, of: &SectionRow) -> Result<Option<SectionRow>, Trouble> {
    for id in &of.inside {
        let inside = section(app, *id)?;
        if inside.kind == "maker" {
            return Ok(Some(inside));
        }
    }
    Ok(None)
}

/// Where one goes after a part was changed.
fn after(app: &App, target: &Target) -> String {
    let base = app.settings.base_path.as_str();
    match (target.kind.as_str(), &target.machine) {
        ("pot", _) => format!("{base}/cupboard"),
        ("point", Some(machine)) => format!("{base}/part/{}", machine.id.0),
        _ => format!("{base}/shop"),
    }
}

/// Keeps what was typed, or shows the form again with what is wrong.
fn save(app: &Arc<App>, visitor: &Visitor, target: &Target, typed: &Typed) -> Result<Response, Trouble> {
    let maker = target.section.as_ref().map(|section| maker(app, section)).transpose()?.flatten();
    let (own, makers): (Vec<Question>, Vec<Question>) =
        target.questions().into_iter().partition(|question| !question.name.starts_with(MAKER));
    let mut changes = Vec::new();
    match &target.section {
        Some(section) => changes.extend(differences(section, &own, "", typed, app.reference)),
        None => {
            let mut says = target.begins.clone();
            says.retain(|(key, _)| !own.iter().any(|question| question.name == *key));
            says.extend(answers(&own, "", typed));
            changes.push(Change::Add { parent: target.parent, kind: target.kind.clone(), says });
        }
    }
    let says = answers(&makers, MAKER, typed);
    match (&maker, &target.section) {
        (Some(maker), _) if says.is_empty() => changes.push(Change::Remove { section: maker.id }),
        (Some(maker), _) => changes.extend(differences(maker, &makers, MAKER, typed, app.reference)),
        (None, Some(section)) if !says.is_empty() => {
            changes.push(Change::Add { parent: section.id, kind: "maker".to_owned(), says });
        }
        _ => {}
    }
    if let Err(faults) = app.change(&changes)? {
        let prefix = |found: &Fault| {
            let of_maker = maker.as_ref().is_some_and(|maker| found.section == Some(maker.id))
                || found
                    .change
                    .and_then(|change| changes.get(change))
                    .is_some_and(|change| matches!(change, Change::Add { kind, .. } if kind == "maker"));
            if of_maker { MAKER } else { "" }
        };
        let wrong = faults.iter().map(|found| (found.key.as_ref().map(|key| format!("{}{key}", prefix(found))), fault(found)));
        return form(app, visitor, target, Some(typed), &wrong.collect());
    }
    Ok(to(after(app, target)))
}

/// What was answered, by key.
fn answers(questions: &[Question], prefix: &str, typed: &Typed) -> Vec<(String, Value)> {
    let answered = questions.iter().map(|question| (question, typed.joined(&question.name))).filter(|(_, typed)| !typed.is_empty());
    answered.map(|(question, typed)| (question.name.trim_start_matches(prefix).to_owned(), question.value(&typed))).collect()
}

/// What is said otherwise than before.
fn differences(section: &SectionRow, questions: &[Question], prefix: &str, typed: &Typed, reference: &Reference) -> Vec<Change> {
    let change = |question: &Question| {
        let key = question.name.trim_start_matches(prefix).to_owned();
        let (before, now) = (section.get(&key), typed.joined(&question.name));
        match before {
            Some(before) if question.means_the_same(&written(before), &now, reference) => None,
            Some(_) if now.is_empty() => Some(Change::Unsay { section: section.id, key }),
            None if now.is_empty() => None,
            _ => Some(Change::Say { section: section.id, key, value: question.value(&now) }),
        }
    };
    questions.iter().filter_map(change).collect()
}
