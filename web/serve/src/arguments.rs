//! What was asked for on the command line.
use std::path::PathBuf;

use crate::trouble::Trouble;

/// The answer to `--help`.
pub const HELP: &str = "\
Builds the Risewright page and serves it on this machine.

Usage: cargo run --release -- [options]

  --build-only   build the page, do not serve it
  --no-build     serve what stands in the folder, do not build
  --dist DIR     the folder to write and serve (default: dist beside index.html)
  --port N       serve on exactly this port, 0 for any free one
                 (default: 8080, or the next free one)
  --trial        build a page that fails on demand, for the tests; never publish it
  --help         this text

What --build-only writes needs no server of its own: put the folder on any static host, under any path.";

/// A command line, understood.
#[derive(Debug, PartialEq, Eq)]
pub enum Request {
    /// Print the help text.
    Help,
    /// Build, serve, or both.
    Run(Arguments),
}

/// What to do, and where.
#[derive(Debug, PartialEq, Eq)]
pub struct Arguments {
    /// Build the page.
    pub build: bool,
    /// Serve the page.
    pub serve: bool,
    /// The folder to write and serve; `None` is `dist` at the root of the project.
    pub dist: Option<PathBuf>,
    /// Build the page that fails on demand.
    pub trial: bool,
    /// Exactly this port, 0 being any free one; `None` is the first free one from 8080 on.
    pub port: Option<u16>,
}

impl Request {
    /// Reads the words after the program's name. Refuses, in one sentence, a word that it does not know, a value that is
    /// missing or no port, and two options that contradict each other.
    pub fn read(words: impl IntoIterator<Item = String>) -> Result<Self, Trouble> {
        let mut arguments = Arguments { build: true, serve: true, dist: None, trial: false, port: None };
        let mut words = words.into_iter();
        while let Some(word) = words.next() {
            let (name, attached) = match word.split_once('=') {
                Some((name, value)) => (name, Some(value.to_owned())),
                None => (word.as_str(), None),
            };
            match name {
                "--dist" => arguments.dist = Some(folder(attached.or_else(|| words.next()))?),
                "--port" => arguments.port = Some(port(attached.or_else(|| words.next()))?),
                _ if attached.is_some() => return Err(unknown(&word)),
                "--help" | "-h" => return Ok(Self::Help),
                "--build-only" => arguments.serve = false,
                "--no-build" => arguments.build = false,
                "--trial" => arguments.trial = true,
                _ => return Err(unknown(&word)),
            }
        }
        if !arguments.build && !arguments.serve {
            return Err(Trouble::new(
                "--build-only and --no-build together leave nothing to do: give one of them.",
            ));
        }
        if arguments.trial && (arguments.serve || arguments.dist.is_none()) {
            return Err(Trouble::new("--trial goes with --build-only and a --dist of its own."));
        }
        if !arguments.serve && arguments.port.is_some() {
            return Err(Trouble::new(
                "--port says where to serve, and --build-only does not serve: give one of them.",
            ));
        }
        Ok(Self::Run(arguments))
    }
}

fn unknown(word: &str) -> Trouble {
    Trouble::new(format!("{word:?} is not an option; --help lists them."))
}

fn folder(value: Option<String>) -> Result<PathBuf, Trouble> {
    match value {
        Some(name) if !name.is_empty() && !name.starts_with("--") => Ok(PathBuf::from(name)),
        _ => Err(Trouble::new("--dist needs the name of a folder after it.")),
    }
}

fn port(value: Option<String>) -> Result<u16, Trouble> {
    let text = value.ok_or_else(|| Trouble::new("--port needs a number after it."))?;
    text.parse()
        .map_err(|_| Trouble::new(format!("--port takes a whole number from 0 to 65535, not {text:?}.")))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(line: &str) -> Result<Request, Trouble> {
        Request::read(line.split_whitespace().map(str::to_owned))
    }

    fn refusal(line: &str) -> String {
        match read(line) {
            Err(trouble) => trouble.to_string(),
            Ok(request) => format!("accepted as {request:?}"),
        }
    }

    #[test]
    fn nothing_said_builds_and_serves() {
        let expected = Arguments { build: true, serve: true, dist: None, trial: false, port: None };
        assert_eq!(read(""), Ok(Request::Run(expected)));
    }

    #[test]
    fn each_option_is_read() {
        let expected =
            Arguments { build: true, serve: false, dist: Some("out".into()), trial: false, port: None };
        assert_eq!(read("--build-only --dist out"), Ok(Request::Run(expected)));
        let expected =
            Arguments { build: true, serve: false, dist: Some("out".into()), trial: true, port: None };
        assert_eq!(read("--trial --build-only --dist out"), Ok(Request::Run(expected)));
        let expected = Arguments { build: false, serve: true, dist: None, trial: false, port: Some(0) };
        assert_eq!(read("--no-build --port 0"), Ok(Request::Run(expected)));
        assert_eq!(read("--help"), Ok(Request::Help));
    }

    #[test]
    fn a_value_may_be_attached() {
        assert_eq!(read("--port=9000 --dist=out"), read("--port 9000 --dist out"));
    }

    #[test]
    fn bad_values_are_refused_by_name() {
        assert_eq!(refusal("--port"), "--port needs a number after it.");
        assert_eq!(refusal("--port 65536"), "--port takes a whole number from 0 to 65535, not \"65536\".");
        assert_eq!(refusal("--port -1"), "--port takes a whole number from 0 to 65535, not \"-1\".");
        assert_eq!(refusal("--dist"), "--dist needs the name of a folder after it.");
        assert_eq!(refusal("--dist --port 1"), "--dist needs the name of a folder after it.");
    }

    #[test]
    fn unknown_words_are_refused() {
        assert_eq!(refusal("serve"), "\"serve\" is not an option; --help lists them.");
        assert_eq!(refusal("--help=yes"), "\"--help=yes\" is not an option; --help lists them.");
    }

    #[test]
    fn contradictions_are_refused() {
        assert!(refusal("--build-only --no-build").contains("nothing to do"));
        assert!(refusal("--build-only --port 1").contains("does not serve"));
        // It must not take the place of the page.
        for line in ["--trial", "--trial --build-only", "--trial --dist out"] {
            assert!(refusal(line).contains("--dist of its own"), "{line}");
        }
    }
}
