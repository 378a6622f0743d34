#!/usr/bin/env bash
# A team's registry as its technician makes it, from the packed tarball: scripts/own-registry.sh TARBALL NEW-FOLDER
# Makes it, contributes a filament with a source, a ladder and its limit, adds a limit to a published filament, checks,
# compares and hands out tables.
set -euo pipefail
tarball=$(realpath "$1")
mkdir "$2"
cd "$2"
npx --yes --package "$tarball" meltbounds init our-limits
cd our-limits
npm install --no-audit --no-fund --save-dev "$tarball"
git init --quiet --initial-branch main
git add .
git -c user.name=Bench -c user.email=bench@example.org commit --quiet --message 'Begin'

npm run check

new() { npx meltbounds new "$@"; }
new source ours-tulip-pla-sheet --set type=document --set 'title=Tulip PLA, data sheet' --set standing=read
new filament ours/tulip-pla --set 'name=Tulip PLA' --set maker=Ours --set sheet=ours-tulip-pla-sheet \
  --set polymer=PLA --set designation=PLA --set 'diameter=1.75 mm' --set 'density=1.24 g/cm3' \
  --set 'nozzleTemperature=200..235 Cel' --set 'bedTemperature=50..60 Cel'
cat > ladder.csv <<'SHEET'
commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]
20,1000,2.98
20,1000,2.98
27,1000,2.97
27,1000,2.97
34,1000,2.95
34,1000,2.97
41,1000,2.93
41,1000,2.92
48,1000,2.65
48,1000,2.63
55,1000,2.22
55,1000,2.21
SHEET
new trial lantern-tulip-pla-230 --from ladder.csv --set machine=brackwater/lantern --set nozzle=hs-0.6 \
  --set filament=ours/tulip-pla --set 'conditions.nozzleTemperature=230 Cel' --set 'scale.resolution=0.01 g' --set origin=bench
npx meltbounds reduce lantern-tulip-pla-230 --adopt

# A ladder with a published filament: its limit goes into an addition, the published file stays as it is.
cat > other.csv <<'SHEET'
commandedFlow [mm3/s],feedLength [mm],extrudedMass [g]
20,1000,2.99
20,1000,2.97
27,1000,2.98
27,1000,2.96
34,1000,2.96
34,1000,2.95
41,1000,2.92
41,1000,2.91
48,1000,2.61
48,1000,2.60
55,1000,2.17
55,1000,2.19
SHEET
new trial our-stagecraft-pla-225 --from other.csv --set machine=brackwater/lantern --set nozzle=hs-0.6 \
  --set filament=ashgrove/stagecraft-pla --set 'conditions.nozzleTemperature=225 Cel' --set 'scale.resolution=0.01 g'
npx meltbounds reduce our-stagecraft-pla-225 --adopt
test -f profiles/additions/ashgrove-stagecraft-pla.yaml

npm run check
npm run diff -- main
npx meltbounds tables brackwater/lantern ours/tulip-pla --nozzle hs-0.6 --policy house --out tables
test "$(find tables -name '*.csv' | wc -l)" -ge 1
