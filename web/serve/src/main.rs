//! Builds the page for any static host and serves it on this machine.
//!
//! `cargo run --release` is the whole start: it compiles `risewright-web` to WebAssembly, writes `dist/` and prints the
//! address at which the page stands.
mod arguments;
mod bundle;
mod compress;
mod connections;
mod dist;
mod first_view;
#[cfg(test)]
mod hardship;
mod headers;
mod offline;
mod project;
#[cfg(test)]
mod scratch;
mod serve;
mod style;
mod trouble;
mod wasm;

use std::process::ExitCode;

use arguments::{Arguments, HELP, Request};
use project::Project;
use trouble::Trouble;

fn main() -> ExitCode {
    let outcome = match Request::read(std::env::args().skip(1)) {
        Ok(Request::Help) => {
            println!("{HELP}");
            Ok(())
        }
        Ok(Request::Run(arguments)) => run(&arguments),
        Err(trouble) => Err(trouble),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(trouble) => {
            eprintln!("risewright-serve: {trouble}");
            ExitCode::FAILURE
        }
    }
}

fn run(arguments: &Arguments) -> Result<(), Trouble> {
    let project = Project::locate();
    let folder = arguments.dist.clone().unwrap_or_else(|| project.root.join("dist"));
    if arguments.build {
        let page = bundle::assemble(&project, arguments.trial)?;
        let written = dist::write(&folder, &page)?;
        println!("{}: {written}", folder.display());
    }
    if arguments.serve {
        serve::serve(&folder, arguments.port)?;
    }
    Ok(())
}
