//! The cupboard: what stands in it, what runs out, what to buy again.

use std::sync::Arc;

use askama::Template;
use axum::extract::State;
use axum::response::Response;
use jiff::civil::Date;
use planner::round::{BuyRow, End, PotRow};
use shop::Pot;

use crate::App;
use crate::frame::{Frame, html};
use crate::visitor::Visitor;
use crate::words;
use crate::worked::Day;

#[derive(Template)]
#[template(path = "cupboard.html")]
struct Page<'a> {
    frame: Frame,
    kept: bool,
    pots: Vec<Row<'a>>,
    again: Vec<(&'a BuyRow, String)>,
    buy: Option<String>,
}

struct Row<'a> {
    pot: &'a Pot,
    /// Its own page, where the shop is kept.
    address: Option<String>,
    /// What it is called.
    called: String,
    left: String,
    size: String,
    opened: String,
    keeps_until: String,
    /// What becomes of it next.
    next: String,
}

pub(crate) async fn page(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    app.draw(visitor, |app, visitor| {
        let shop = app.source.shop()?;
        let frame = Frame::new(app, visitor, "Cupboard", "Cupboard");
        let worked = app.plan(&shop, frame.units)?;
        let now = app.source.now().transpose()?;
        let day = worked.day.as_ref().and_then(|day| day.as_ref().ok());
        let address = |pot: &Pot| {
            let id = now.as_ref()?.described.section(&pot.at)?;
            Some(format!("{}/pot/{}", frame.base, id.0))
        };
        let row = |(place, pot)| {
            row(
                pot,
                words::pot(pot, app.reference),
                address(pot),
                day.and_then(|day: &Day| day.cupboard.pots.iter().find(|row| row.pot == place + 1)),
                &frame,
            )
        };
        let pots = shop.pots.iter().enumerate().map(row).collect();
        html(&Page {
            kept: now.is_some(),
            pots,
            again: day.map_or_else(Vec::new, |day| day.cupboard.buy.iter().map(|row| (row, pack(row))).collect()),
            buy: worked.report.ladder.first().map(|rung| rung.name.clone()),
            frame,
        })
    })
    .await
}

/// The pack to buy and its price.
pub(crate) fn pack(row: &BuyRow) -> String {
    let price = row.price.map_or_else(String::new, |price| format!(", about {price:.2} {}", row.currency));
    format!("{}{price}", row.pack.as_deref().unwrap_or_default())
}

fn row<'a>(pot: &'a Pot, called: String, address: Option<String>, stands: Option<&PotRow>, frame: &Frame) -> Row<'a> {
    let amount = |amount: Option<units::Amount>| amount.map_or_else(String::new, |amount| amount.show(frame.units));
    let day = |day: Option<Date>| day.map_or_else(String::new, |day| day.to_string());
    let next = stands.map_or_else(String::new, |row| match row.end {
        End::Empty => "empty".to_owned(),
        End::Expired => "too old".to_owned(),
        End::UsedUp => format!("used up about {}", day(row.empty_on)),
        End::Expires => format!("goes off {}", day(row.expires_on)),
        End::Unknown => String::new(),
    });
    Row {
        address,
        called,
        left: amount(pot.left),
        size: amount(pot.size),
        opened: day(pot.opened),
        keeps_until: day(pot.keeps_until),
        next,
        pot,
    }
}
