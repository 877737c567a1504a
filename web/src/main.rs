//! The page, and the worker beside it: one program, loaded twice.
mod app;
mod browser;
mod confirm;
mod desk;
mod drawing;
mod engine;
mod form;
mod frame;
mod hear;
mod keep;
mod keeping;
mod language;
mod lectern;
mod map;
mod run;
mod select;
mod share;
mod sheet;
mod shelf;
mod shop;
mod song;
mod starter;
mod state;
mod steady;
mod strategy;
mod text;
mod trouble;
mod units;
mod version;

fn main() {
    if engine::inside::in_worker() {
        engine::inside::run();
    } else {
        wasm_bindgen_futures::spawn_local(async {
            let props = app::AppProps {
                news: language::begin().await,
                begun: shop::begin().await.into(),
            };
            yew::Renderer::<app::App>::with_props(props).render();
        });
    }
}
