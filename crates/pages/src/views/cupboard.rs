//! The cupboard: what stands in it, as the shop file says.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::response::Response;
use jiff::civil::Date;
use shop::Pot;

use crate::App;
use crate::frame::{Frame, html};
use crate::visitor::Visitor;

#[derive(Template)]
#[template(path = "cupboard.html")]
struct Page<'a> {
    frame: Frame,
    pots: Vec<Row<'a>>,
    buy: Option<String>,
}

struct Row<'a> {
    pot: &'a Pot,
    fluid: String,
    left: String,
    size: String,
    opened: String,
    keeps_until: String,
}

pub(crate) async fn page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        let shop = app.source.shop()?;
        let frame = Frame::new(app, visitor, "Cupboard", "Cupboard");
        let worked = app.plan(&shop, frame.units)?;
        let row = |pot| row(pot, &frame);
        html(&Page { pots: shop.pots.iter().map(row).collect(), buy: worked.report.ladder.first().map(|rung| rung.name.clone()), frame })
    })
    .await
}

fn row<'a>(pot: &'a Pot, frame: &Frame) -> Row<'a> {
    let amount = |amount: Option<units::Amount>| amount.map_or_else(String::new, |amount| amount.show(frame.units));
    let day = |day: Option<Date>| day.map_or_else(String::new, |day| day.to_string());
    Row {
        fluid: frame.name_of(&pot.fluid),
        left: amount(pot.left),
        size: amount(pot.size),
        opened: day(pot.opened),
        keeps_until: day(pot.keeps_until),
        pot,
    }
}
