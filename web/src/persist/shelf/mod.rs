//! The shelf: designs that the reader keeps in the browser by name. Each has an entry of its own, so that two tabs never lose a design to
//! each other; where the browser keeps nothing, the shelf lasts as long as the page.
mod shelved;

use std::collections::BTreeMap;
use std::fmt;

use leptos::prelude::*;
use risewright::design::Design;
use risewright::share::link;

use super::storage::{self, Place, Refused};
use crate::clock::stamp;
use shelved::PREFIX;

pub use shelved::{Shelf, Shelved};

/// Why something was not done; nothing else on the shelf has changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// There was no room for a design of this name.
    Full(String),
    /// It is not on the shelf any more.
    Gone,
}

impl fmt::Display for Fault {
    fn fmt(&self, form: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Full(name) => write!(
                form,
                "The browser's storage is full: there was no room on the shelf for \u{201c}{name}\u{201d}. Take something off the shelf, or save the design as a file."
            ),
            Self::Gone => {
                form.write_str("This design is not on the shelf any more: another tab has taken it off.")
            }
        }
    }
}

/// Puts designs on the shelf and takes them off.
#[derive(Clone, Copy)]
pub struct Keeper {
    /// What is on it, in step with all tabs.
    pub shelf: RwSignal<Shelf>,
    /// Keys and texts where the browser keeps none.
    memory: StoredValue<Option<BTreeMap<String, String>>>,
}

impl Keeper {
    /// The shelf of this browser; it follows what other tabs do to it.
    pub fn new() -> Self {
        let refused = storage::all(Place::Browser, PREFIX).is_err();
        let memory = StoredValue::new(refused.then(BTreeMap::new));
        let keeper = Self { shelf: RwSignal::new(Shelf::default()), memory };
        keeper.look();
        window_event_listener(leptos::ev::storage, move |event| {
            if event.key().is_none_or(|key| key.starts_with(PREFIX)) {
                keeper.look();
            }
        });
        keeper
    }

    /// Puts a design there, with what else belongs to it, and returns its id; one that stands there already stays the only one.
    pub fn put(self, design: &Design, extra: &str) -> Result<String, Fault> {
        let text = link::encode(design);
        let known = self.shelf.with_untracked(|shelf| {
            let same = shelf.designs.iter().find(|shelved| shelved.link == text && shelved.extra == extra);
            same.map(|same| same.id.clone())
        });
        match known {
            Some(id) if self.stored(&id).is_ok() => Ok(id),
            _ => self.add(&Shelved::new(String::new(), stamp(), design, extra)),
        }
    }

    /// Gives a design another name.
    pub fn rename(self, id: &str, name: &str) -> Result<(), Fault> {
        let renamed = self.stored(id)?.renamed(name, stamp());
        self.write(&renamed)
    }

    /// Puts a copy beside a design and returns its id.
    pub fn duplicate(self, id: &str) -> Result<String, Fault> {
        let original = self.stored(id)?;
        let name = self.shelf.with_untracked(|shelf| shelf.name_of_copy(&original.name));
        self.add(&original.renamed(&name, stamp()))
    }

    /// Takes a design off the shelf and returns it: [`Self::put_back`] undoes it.
    pub fn remove(self, id: &str) -> Result<Shelved, Fault> {
        let removed = self.stored(id)?;
        let key = removed.key();
        if self.memory.with_value(Option::is_none) {
            storage::remove(Place::Browser, &key);
        }
        self.memory.update_value(|memory| {
            if let Some(memory) = memory {
                memory.remove(&key);
            }
        });
        self.look();
        Ok(removed)
    }

    /// Puts a design there again as it was.
    pub fn put_back(self, removed: &Shelved) -> Result<(), Fault> {
        match self.stored(&removed.id) {
            Ok(same) if same == *removed => Ok(()),
            Ok(_) => self.add(removed).map(|_id| ()),
            Err(_) => self.write(removed),
        }
    }

    /// Puts it there under an id that is free.
    fn add(self, shelved: &Shelved) -> Result<String, Fault> {
        let taken = |id: &String| self.text(&format!("{PREFIX}{id}")).is_some();
        let mut id = fresh_id();
        while taken(&id) {
            id = fresh_id();
        }
        self.write(&Shelved { id: id.clone(), ..shelved.clone() })?;
        Ok(id)
    }

    fn write(self, shelved: &Shelved) -> Result<(), Fault> {
        let (key, text) = (shelved.key(), shelved.write());
        if self.memory.with_value(Option::is_none) {
            match storage::write(Place::Browser, &key, &text) {
                Ok(()) => {
                    self.look();
                    return Ok(());
                }
                Err(Refused::Full) => return Err(Fault::Full(shelved.name.clone())),
                // From now on from memory, with what was there.
                Err(Refused::Denied) => self.memory.set_value(Some(self.shelf.with_untracked(|shelf| {
                    shelf.designs.iter().map(|shelved| (shelved.key(), shelved.write())).collect()
                }))),
            }
        }
        self.memory.update_value(|memory| {
            if let Some(memory) = memory {
                memory.insert(key, text);
            }
        });
        self.look();
        Ok(())
    }

    /// A design as it stands there now, whatever another tab has done.
    fn stored(self, id: &str) -> Result<Shelved, Fault> {
        let key = format!("{PREFIX}{id}");
        self.text(&key).and_then(|text| Shelved::read(&key, &text)).ok_or(Fault::Gone)
    }

    fn text(self, key: &str) -> Option<String> {
        self.memory.with_value(|memory| match memory {
            Some(memory) => memory.get(key).cloned(),
            None => storage::read(Place::Browser, key),
        })
    }

    /// Brings the signal in step with what is kept.
    fn look(self) {
        let shelf = self.memory.with_value(|memory| match memory {
            Some(memory) => Shelf::of(memory.clone().into_iter().collect(), true),
            None => Shelf::of(storage::all(Place::Browser, PREFIX).unwrap_or_default(), false),
        });
        if self.shelf.with_untracked(|known| *known != shelf) {
            self.shelf.set(shelf);
        }
    }
}

/// Twenty random bits after the time, so that two tabs do not meet.
fn fresh_id() -> String {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a whole number of twenty bits"
    )]
    let random = (js_sys::Math::random() * f64::from(1 << 20)) as u32;
    format!("{:x}{random:05x}", stamp())
}
