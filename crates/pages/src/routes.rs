//! Which page stands at which address.

use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use axum::extract::{DefaultBodyLimit, Path, Request, State};
use axum::http::StatusCode;
use axum::http::uri::PathAndQuery;
use axum::middleware::{Next, from_fn_with_state};
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use tower::ServiceBuilder;
use tower_http::timeout::TimeoutLayer;

use crate::App;
use crate::assets::Assets;
use crate::guard::{headers, login, stand};
use crate::paper;
use crate::trouble::Trouble;
use crate::views::{
    api, bench, cautions, chart, cupboard, done, feed, fluid, ladder, log, meters, part, pot, shop, sources, start, table, today, units,
    why, work,
};
use crate::visitor::Visitor;

/// No form here is longer, and no page takes longer.
const LONGEST_BODY: usize = 64 << 10;
const LONGEST_TIME: Duration = Duration::from_secs(20);

/// The pages of a shop, with the guard in front of them.
pub fn router(app: Arc<App>) -> Router {
    let pages = Router::new()
        .route("/", get(today::page))
        .route("/start", get(start::page).post(start::make))
        .route("/done", get(done::page).post(done::serve))
        .route("/undo", post(done::undo))
        .route("/meters", get(meters::page).post(meters::read))
        .route("/log", get(log::page))
        .route("/shop", get(shop::page))
        .route("/part/{id}", get(part::page).post(part::change))
        .route("/part/{id}/move", post(part::shift))
        .route("/part/{id}/remove", post(part::remove))
        .route("/only/{kind}", get(part::only).post(part::change_only))
        .route("/add/{kind}", get(part::blank).post(part::add))
        .route("/ladder", get(ladder::page))
        .route("/chart/{machine}", get(chart::page))
        .route("/why/{need}", get(why::page))
        .route("/fluid/{key}", get(fluid::page))
        .route("/work", get(work::page))
        .route("/cupboard", get(cupboard::page))
        .route("/cupboard.csv", get(table::out))
        .route("/cupboard/table", get(table::page).post(table::bring).layer(DefaultBodyLimit::max(table::LARGEST)))
        .route("/pot/{id}", get(pot::page))
        .route("/pot/{id}/{doing}", post(done::pot))
        .route("/bench", get(bench::list_page))
        .route("/bench/{sheet}", get(bench::page))
        .route("/cautions", get(cautions::page))
        .route("/paper", get(paper::list))
        .route("/paper/{sheet}", get(paper::sheet))
        .route("/paper/bench/{sheet}", get(paper::bench))
        .route("/sources", get(sources::page))
        .route("/calendar", get(feed::page).post(feed::renew))
        .route("/calendar/{name}", get(feed::feed))
        .route("/api", get(api::description))
        .route("/api/plan", get(api::plan))
        .route("/api/round", get(api::round))
        .route("/api/cupboard", get(api::cupboard))
        .route("/api/log", get(api::log))
        .route("/units", post(units::choose))
        .route("/login", get(login::door).post(login::answer))
        .route("/logout", post(login::leave))
        .route("/assets/{name}", get(asset))
        .route("/health", get(health))
        .fallback(nothing);
    let pages = pages.with_state(Arc::clone(&app));
    let pages = Router::new().fallback_service(pages).layer(from_fn_with_state(Arc::clone(&app), below_base));
    let guard = ServiceBuilder::new()
        .layer(from_fn_with_state(Arc::clone(&app), headers::put))
        .layer(TimeoutLayer::with_status_code(StatusCode::SERVICE_UNAVAILABLE, LONGEST_TIME))
        .layer(DefaultBodyLimit::max(LONGEST_BODY))
        .layer(from_fn_with_state(Arc::clone(&app), stand));
    pages.layer(guard)
}

/// Takes the base path off an address; what does not stand below it is nowhere.
async fn below_base(State(app): State<Arc<App>>, mut request: Request, next: Next) -> Response {
    let asked = request.uri().path_and_query().map_or("/", PathAndQuery::as_str);
    let below = match asked.strip_prefix(app.settings.base_path.as_str()) {
        Some(rest) if rest.starts_with('/') => rest.parse(),
        Some(rest) if rest.is_empty() || rest.starts_with('?') => format!("/{rest}").parse(),
        _ => return StatusCode::NOT_FOUND.into_response(),
    };
    let Ok(uri) = below else { return StatusCode::BAD_REQUEST.into_response() };
    *request.uri_mut() = uri;
    next.run(request).await
}

/// Says that the server is there, and nothing else.
async fn health() -> &'static str {
    "ok\n"
}

async fn asset(Path(name): Path<String>) -> Response {
    Assets::get().answer(&name)
}

async fn nothing(State(app): State<Arc<App>>, visitor: Visitor) -> Response {
    Trouble::NotFound("There is no page at this address. The five words lead to all there are.".to_owned()).page(&app, &visitor)
}
