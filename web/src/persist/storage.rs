//! The browser's storage: two places for the design, each with a checksum, so that a write that breaks off or a value that
//! was damaged never takes the last good design with it. Where storage is refused, the page works without.
use risewright::design::Design;
use risewright::share::link;
use web_sys::Storage;

const SLOTS: [&str; 2] = ["risewright.design.a", "risewright.design.b"];
const UNITS: &str = "risewright.units";

fn storage() -> Option<Storage> {
    web_sys::window()?.local_storage().ok()?
}

fn read(key: &str) -> Option<String> {
    storage()?.get_item(key).ok()?
}

fn write(key: &str, value: &str) {
    if let Some(storage) = storage() {
        // Full or refused: address and link still hold the design.
        let _ = storage.set_item(key, value);
    }
}

/// The units the reader chose last.
pub fn units() -> Option<String> {
    read(UNITS)
}

/// Remembers the reader's units.
pub fn keep_units(name: &str) {
    write(UNITS, name);
}

/// The design that was kept last.
pub fn kept() -> Option<Design> {
    let entries = SLOTS.map(|slot| read(slot).and_then(|text| Entry::read(&text)));
    let newest = entries.into_iter().flatten().max_by_key(|entry| entry.count)?;
    link::decode(&newest.link).ok()
}

/// Keeps a design, given as the text of its link, in the place that holds the older one.
pub fn keep(link: &str) {
    let counts =
        SLOTS.map(|slot| read(slot).and_then(|text| Entry::read(&text)).map_or(0, |entry| entry.count));
    let older = usize::from(counts[1] < counts[0]);
    let entry = Entry { count: counts[0].max(counts[1]).saturating_add(1), link: link.to_owned() };
    write(SLOTS[older], &entry.write());
}

#[derive(Debug, PartialEq)]
struct Entry {
    /// Rises with every write.
    count: u64,
    link: String,
}

impl Entry {
    /// Count, checksum and link, with spaces between them.
    fn write(&self) -> String {
        format!("{} {:08x} {}", self.count, self.checksum(), self.link)
    }

    fn read(text: &str) -> Option<Self> {
        let mut parts = text.splitn(3, ' ');
        let count = parts.next()?.parse().ok()?;
        let checksum = u32::from_str_radix(parts.next()?, 16).ok()?;
        let entry = Self { count, link: parts.next()?.to_owned() };
        (entry.checksum() == checksum).then_some(entry)
    }

    /// FNV-1a over count and link (Fowler, Noll and Vo, 32 bit; basis and prime from memory).
    fn checksum(&self) -> u32 {
        const BASIS: u32 = 0x811c_9dc5;
        const PRIME: u32 = 0x0100_0193;
        self.count
            .to_le_bytes()
            .into_iter()
            .chain(self.link.bytes())
            .fold(BASIS, |hash, byte| (hash ^ u32::from(byte)).wrapping_mul(PRIME))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_kept_is_read_back_and_damage_is_seen() {
        let entry = Entry { count: 7, link: "a.lm25hda.~My%20lift".into() };
        let text = entry.write();
        assert_eq!(Entry::read(&text), Some(entry));
        assert_eq!(Entry::read(&text.replace("25", "26")), None);
        assert_eq!(Entry::read(&text.replace('7', "8")), None);
        assert_eq!(Entry::read(&text[..text.len() - 1]), None);
        assert_eq!(Entry::read(""), None);
    }
}
