//! The pages of a shop, drawn on the server, and the guard in front of them.
//!
//! [`App`] is one shop and how it is shown to others ([`Settings`]); [`router`] makes the pages of it, with the guard in front;
//! [`serve()`] opens them to a network. Pages are drawn whole from templates: there is no script, and nothing is fetched from elsewhere.
//!
//! **Invariant:** a page computes nothing of the trade; it shows what [`planner`] and [`mod@bench`] found, and says where each number comes from.

mod app;
mod assets;
mod cookie;
mod form;
mod frame;
mod guard;
mod kept;
pub mod paper;
mod routes;
mod serve;
mod settings;
mod source;
mod tls;
mod trouble;
mod views;
mod visitor;
mod words;
mod worked;

pub use app::App;
pub use guard::passphrase::{Passphrase, Weak};
pub use routes::router;
pub use serve::{Peer, ServeError, serve, serve_until};
pub use settings::{BasePath, Origin, Settings, SettingsError};
pub use source::ShopSource;
pub use tls::{Identity, TlsError};
