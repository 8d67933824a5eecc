#!/usr/bin/env bash
# Writes the demos' DXF files and has ezdxf audit them, in a Python environment of its own under the target folder.
set -euo pipefail
cd "$(dirname "$0")/../.."
target=${CARGO_TARGET_DIR:-target}
folder=$target/dxf
python=$target/dxf-python
mkdir -p "$folder"
rm -f "$folder"/*.dxf "$folder"/*.sizes
if [ ! -x "$python/bin/pip" ] && ! python3 -m venv "$python"; then
  echo "The check of the DXF files needs Python 3.10 or newer with venv: install python3-venv." >&2
  exit 2
fi
"$python/bin/pip" install --quiet --disable-pip-version-check --requirement tests/dxf/requirements.txt
cargo run --locked --quiet -p risewright-tests --example cutting_files -- "$folder"
"$python/bin/python" tests/dxf/audit.py "$folder"
