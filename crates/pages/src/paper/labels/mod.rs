//! Labels for pots and decanted bottles.

mod code;
mod draw;
mod flow;
mod geometry;
mod measure;

use askama::Template;
use handling::label::{of_dilution, of_fluid};
use planner::round::{Expiry, PotRow};
use reference::Fluid;
use shop::Pot;
use store::SectionId;

use self::code::Code;
use self::draw::Content;
pub use self::geometry::Geometry;
use super::{Head, Paper, Sheet, escaped, unbroken};
use crate::frame::Piece;
use crate::words::sentence;

/// What is kept clear within a label, and at least towards the edge of the paper, where printers do not reach, mm; *common practice*.
const CLEAR: f64 = 2.0;
const EDGE: f64 = 5.0;
/// What is left off beneath the last row, so that rounding never makes it two sheets, mm.
const TRIM: f64 = 0.3;

/// Which labels, and how they are drawn.
#[derive(Debug, Clone)]
pub struct Labels {
    /// How they lie on their sheet.
    pub geometry: Geometry,
    /// How many of the first sheet are gone already.
    pub gone: usize,
    /// Whether lines are drawn to cut along.
    pub cut: bool,
    /// Only the pot of this number in the kept shop.
    pub pot: Option<SectionId>,
    /// Keys of fluids of which a bottle is filled from a larger one.
    pub decanted: Vec<String>,
}

#[derive(Template)]
#[template(path = "paper/labels.html")]
struct Page {
    head: Head,
    geometry: String,
    sheets: Vec<Piece>,
}

impl Paper<'_> {
    /// The labels, sheet by sheet.
    pub(super) fn labels(&self, wanted: &Labels) -> Result<String, askama::Error> {
        let geometry = wanted.geometry;
        let contents = self.contents(wanted);
        let inset = (CLEAR.max(EDGE - geometry.left), CLEAR.max(EDGE - geometry.top));
        let places: Vec<_> = geometry.places().collect();
        let gone = wanted.gone.min(places.len().saturating_sub(1));
        let mut waiting = contents.iter();
        let mut sheets = Vec::new();
        while waiting.len() > 0 {
            let free = if sheets.is_empty() { &places[gone..] } else { &places[..] };
            let labels: String = free.iter().zip(waiting.by_ref()).map(|(at, one)| label(one, geometry, *at, inset, wanted.cut)).collect();
            let ((width, height), trimmed) = (self.size.mm(), self.size.mm().1 - TRIM);
            sheets.push(Piece(format!(
                "<svg class=\"page\" width=\"{width}mm\" height=\"{trimmed}mm\" viewBox=\"0 0 {width} {trimmed}\" role=\"group\" \
                 aria-label=\"Labels on a sheet of {width} by {height} mm\" font-family=\"Helvetica, Arial, sans-serif\">{labels}</svg>"
            )));
        }
        Page { head: self.head_of(Sheet::Labels), geometry: geometry.to_string(), sheets }.render()
    }

    fn contents(&self, wanted: &Labels) -> Vec<Content> {
        let pots = self.worked.shop.pots.iter().zip(self.pots).enumerate();
        let pots = pots.filter(|(_, (_, id))| wanted.pot.is_none() || **id == wanted.pot);
        let day = self.worked.day.as_ref().and_then(|day| day.as_ref().ok());
        let row = |place: usize| day.and_then(|day| day.cupboard.pots.iter().find(|row| row.pot == place + 1));
        let pots = pots.filter_map(|(place, (pot, id))| {
            let fluid = self.reference.fluid(&pot.fluid)?;
            Some(self.of_pot(pot, *id, fluid, row(place)))
        });
        let decanted = wanted.decanted.iter().filter_map(|key| self.reference.fluid(key)).flat_map(|fluid| self.of_bottle(fluid));
        pots.chain(decanted).collect()
    }

    fn of_pot(&self, pot: &Pot, id: Option<SectionId>, fluid: &Fluid, row: Option<&PotRow>) -> Content {
        let label = of_fluid(fluid, self.reference);
        let name = pot.name.as_ref().map_or_else(|| fluid.name.clone(), |own| format!("{} ({own})", fluid.name));
        // A day that only follows from when it will be opened is none to write on a bottle.
        let known = row.filter(|row| row.expires_by != Some(Expiry::OnceOpened)).and_then(|row| row.expires_on);
        let day = |day: Option<jiff::civil::Date>| day.map(|day| day.to_string());
        let dates = vec![
            ("Bought", day(pot.bought)),
            ("Opened", day(pot.opened)),
            ("Good until", day(known.or(pot.keeps_until))),
            ("Lot", pot.lot.clone()),
        ];
        let code = self.address.zip(id).and_then(|(address, SectionId(id))| Code::of(&format!("{address}/pot/{id}")));
        Content { name: sentence(&unbroken(&name)), label, dates, code }
    }

    /// A bottle filled from a larger one, and another of what is mixed of it, where it is used thinned.
    fn of_bottle(&self, fluid: &Fluid) -> Vec<Content> {
        let bottle = |label: handling::label::Label| Content {
            name: sentence(&unbroken(&label.product)),
            label,
            dates: vec![("Decanted", Some(self.today.to_string())), ("Good until", None), ("Lot", None)],
            code: None,
        };
        let thinned = fluid.dilution.as_ref().map(|dilution| of_dilution(fluid, dilution.value.high, None, self.reference));
        std::iter::once(of_fluid(fluid, self.reference)).chain(thinned).map(bottle).collect()
    }
}

fn label(content: &Content, geometry: Geometry, (x, y): (f64, f64), inset: (f64, f64), cut: bool) -> String {
    let Geometry { width, height, .. } = geometry;
    let body = content.draw(width, height, inset);
    let line = if cut {
        format!("<rect class=\"cut\" width=\"{width:.2}\" height=\"{height:.2}\" fill=\"none\" stroke=\"#888\" stroke-width=\"0.15\"/>")
    } else {
        String::new()
    };
    let name = escaped(&content.name);
    format!(
        "<svg class=\"label\" x=\"{x:.2}\" y=\"{y:.2}\" width=\"{width:.2}\" height=\"{height:.2}\" viewBox=\"0 0 {width:.2} {height:.2}\" \
         role=\"img\" aria-label=\"{name}\">{line}{body}</svg>"
    )
}
