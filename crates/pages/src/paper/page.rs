//! The sheets as pages, and the page that lists them.

use std::sync::Arc;

use askama::Template;
use axum::extract::{Path, State};
use axum::http::HeaderValue;
use axum::http::header::CONTENT_TYPE;
use axum::response::{IntoResponse, Response};
use bench::{read, sheet as find};
use store::SectionId;
use units::System;

use super::{Geometry, Labels, Paper, Sheet, Size, address};
use crate::App;
use crate::assets::Assets;
use crate::form::sheet::typed;
use crate::frame::{Frame, html};
use crate::trouble::Trouble;
use crate::visitor::Visitor;
use crate::words::{in_words, pot_among_others};

#[derive(Template)]
#[template(path = "paper/list.html")]
struct List {
    frame: Frame,
    /// Those that are drawn without a question; labels have their own.
    sheets: [Sheet; 4],
    sizes: [Size; 2],
    size: Size,
    machines: Vec<String>,
    /// Pots that have a label of their own.
    pots: Vec<(i64, String)>,
    has_pots: bool,
    /// Keys and names of fluids that may be filled into a bottle.
    fluids: Vec<(String, String)>,
    geometries: Vec<&'static str>,
    address: String,
}

/// The list of the sheets.
pub(crate) async fn list(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, move |app, visitor| {
        let shop = app.source.shop()?;
        let frame = Frame::new(app, visitor, "Shop", "On paper");
        let size = size(visitor, frame.units)?;
        let ids = pots(app)?;
        let fluids = app.reference.fluids.values().filter(|fluid| fluid.barred.is_none() && !fluid.always_there);
        html(&List {
            sheets: [Sheet::Chart, Sheet::Round, Sheet::Buying, Sheet::Cautions],
            sizes: Size::ALL,
            size,
            machines: shop.machines.iter().map(|machine| machine.name.clone()).collect(),
            pots: shop.pots.iter().zip(ids).filter_map(|(pot, id)| Some((id?.0, pot_among_others(pot, app.reference)))).collect(),
            has_pots: !shop.pots.is_empty(),
            fluids: fluids.map(|fluid| (fluid.key.clone(), fluid.name.clone())).collect(),
            geometries: Geometry::offered(size).collect(),
            address: app.settings.seen_at(&visitor.host),
            frame,
        })
    })
    .await
}

/// One sheet.
pub(crate) async fn sheet(State(app): State<Arc<App>>, Path(word): Path<String>, visitor: Visitor) -> Response {
    app.draw(visitor, move |app, visitor| {
        let unknown = || Trouble::NotFound(format!("There is no sheet called “{word}”. The list of sheets has all there are."));
        let sheet = Sheet::of_word(&word).ok_or_else(unknown)?;
        let shop = app.source.shop()?;
        let machine = visitor.typed("machine");
        if let Some(machine) = machine.filter(|machine| shop.machines.iter().all(|one| one.name != *machine)) {
            return Err(Trouble::NotFound(format!("No machine of this shop is called “{machine}”.")));
        }
        let address = match visitor.typed("address") {
            Some(text) => address(text).map_err(Trouble::Unanswered)?,
            None => app.settings.seen_at(&visitor.host),
        };
        on_paper(app, visitor, |paper| {
            let paper = Paper { address: Some(&address), ..paper };
            let labels = labels(visitor, paper.size)?;
            Ok(paper.draw(sheet, machine, &labels)?)
        })
    })
    .await
}

/// A worked calculation.
pub(crate) async fn bench(State(app): State<Arc<App>>, Path(name): Path<String>, visitor: Visitor) -> Response {
    app.draw(visitor, move |app, visitor| {
        let unknown = || Trouble::NotFound(format!("There is no sheet called “{name}”. The bench lists all there are."));
        let sheet = find(&name).ok_or_else(unknown)?;
        let given = typed(sheet, visitor);
        let given: Vec<(&str, &str)> = given.iter().map(|(name, value)| (*name, value.as_str())).collect();
        let refused = |_| Trouble::Unanswered(format!("The sheet “{name}” of the bench says at each field what these values lack."));
        let reply = read(sheet, &given, app.reference).map_err(refused)?;
        on_paper(app, visitor, |paper| {
            let page = sheet.work(&reply, app.reference, paper.worked.units);
            let page = page.map_err(|error| Trouble::Unanswered(in_words(&error)))?;
            paper.worked(sheet, &page).map_err(|error| Trouble::Fault(error.to_string()))
        })
    })
    .await
}

/// Draws something on paper, with all that is known of the shop.
fn on_paper(app: &Arc<App>, visitor: &Visitor, draw: impl FnOnce(Paper<'_>) -> Result<String, Trouble>) -> Result<Response, Trouble> {
    let shop = app.source.shop()?;
    let units = visitor.units.unwrap_or(shop.units);
    let (size, worked, pots) = (size(visitor, units)?, app.plan(&shop, units)?, pots(app)?);
    let base = app.settings.base_path.as_str();
    let link = |name| format!("<link rel=\"stylesheet\" href=\"{base}{}\">", Assets::get().path(name));
    let (styles, back) = (link("paper.css") + &link(size.style()), format!("{base}/paper?size={}", size.word()));
    let text = draw(Paper {
        worked: &worked,
        reference: app.reference,
        today: app.now().date(),
        size,
        pots: &pots,
        address: None,
        styles: &styles,
        back: Some(&back),
    })?;
    Ok(([(CONTENT_TYPE, HeaderValue::from_static("text/html; charset=utf-8"))], text).into_response())
}

/// The size asked for, or the one that is usual with these units.
fn size(visitor: &Visitor, units: System) -> Result<Size, Trouble> {
    let Some(word) = visitor.typed("size") else { return Ok(Size::usual(units)) };
    Size::of_word(word).ok_or_else(|| Trouble::Unanswered(format!("“{word}” is no size of paper known here; there are a4 and letter.")))
}

/// The number of each pot, in the order of the shop; none where the shop is not kept.
fn pots(app: &App) -> Result<Vec<Option<SectionId>>, Trouble> {
    let now = app.source.now().transpose()?;
    Ok(match now {
        Some(now) => now.described.pots().collect(),
        None => vec![None; app.source.shop()?.pots.len()],
    })
}

fn labels(visitor: &Visitor, size: Size) -> Result<Labels, Trouble> {
    let usual = Geometry::offered(size).next().unwrap_or_default();
    let text = visitor.typed("own").or_else(|| visitor.typed("labels")).unwrap_or(usual);
    let wrong = |said: String| Trouble::Unanswered(format!("These labels cannot be drawn: {said}."));
    let first = visitor.typed("first").map_or(Some(1), |text| text.trim().parse::<usize>().ok().filter(|first| *first > 0));
    let first = first.ok_or_else(|| wrong("the first free label is counted from 1".to_owned()))?;
    Ok(Labels {
        geometry: Geometry::parse(text, size).map_err(wrong)?,
        gone: first - 1,
        cut: visitor.typed("cut").is_some(),
        pot: visitor.typed("pot").and_then(|id| id.parse().ok()).map(SectionId),
        decanted: visitor.all("decanted").map(str::to_owned).collect(),
    })
}
