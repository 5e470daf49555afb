#!/bin/bash
# Measures the cutting planner over a folder of instances, on one thread, with limits in processor
# seconds, and writes the results beside this script. The short limits run over every class; the long
# one over what can still be open by then.
#   bash tests/Benchmarks/measure-cutting.sh FOLDER
set -u
here=$(cd "$(dirname "$0")" && pwd)
folder=${1:?the folder of instances}
results=$here/results
dotnet build -c Release --nologo -v q "$here" || exit 1
bench() { dotnet run -c Release --no-build --project "$here" -- "$@"; }
uptime
bench cutting "$folder" --seconds 1 --csv "$results/cutting-1s.csv"
bench cutting "$folder" --seconds 10 --csv "$results/cutting-10s.csv"
: > "$results/cutting-60s.csv"
for match in ai/ ani/ gi/ hard28/ waescher/ random/ vscsp/; do
    part=$(mktemp)
    bench cutting "$folder" --seconds 60 --match "$match" --csv "$part"
    if [ -s "$results/cutting-60s.csv" ]; then tail -n +2 "$part"; else cat "$part"; fi \
        >> "$results/cutting-60s.csv"
    rm -f "$part"
done
bench cutting "$folder/shop" --seconds 30 --plot "$results/cutting-curves.svg"
bench cutting-table "$results"/cutting-{1,10,60}s.csv
uptime
