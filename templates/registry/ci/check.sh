#!/bin/sh
# Checks the registry and says what a change means, in any shell: sh ci/check.sh [BASE] [FOLDER]
#   BASE    what to compare with; origin/main unless given
#   FOLDER  where the reports go; reports unless given
# Reports: junit.xml for build servers, quality.json for widgets of merge requests, check.md and check.html for people,
# diff.md for a comment. A report that a run could not write is not there, so that no empty one replaces a good one.
# Exit status: 0 nothing to fix; 1 problems, or a version that has not moved far enough; 2 it could not run.
set -u
base=${1:-origin/main}
folder=${2:-reports}
worst=0

# report FILE COMMAND... keeps what a command prints, unless it could not run.
report() {
  file=$folder/$1
  shift
  status=0
  npx --no-install meltbounds "$@" > "$file.part" || status=$?
  if [ "$status" -le 1 ] && [ -s "$file.part" ]; then mv "$file.part" "$file"; else rm -f "$file.part"; fi
  if [ "$status" -gt 2 ]; then status=2; fi
  if [ "$status" -gt "$worst" ]; then worst=$status; fi
}

mkdir -p "$folder" || exit 2
npm ci --no-audit --no-fund || exit 2
report junit.xml check --fail-on warning --format junit
report quality.json check --fail-on warning --format codeQuality
report check.md check --fail-on warning --format markdown
report check.html check --fail-on warning --format html
report diff.md diff "$base" --format markdown
if [ -f "$folder/check.md" ]; then cat "$folder/check.md"; fi
exit "$worst"
