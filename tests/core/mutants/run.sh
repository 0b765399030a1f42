# SPDX-FileCopyrightText: Witnessmark contributors
# SPDX-License-Identifier: GPL-3.0-or-later
# Do the tests notice? For each line of mutants.list: puts the error into a copy of the source, links the copy with
# the tests that are built, and expects them to fail. A mutant that does not apply or does not compile is an error of
# the list, not a success. Started by the target `mutants`:
#   sh run.sh SOURCE_DIR SCRATCH_DIR COMPILER LIBRARY OBJECT_LIST -- LINK_FLAGS...
set -u
source_dir=$1 scratch=$2 compiler=$3 library=$4 objects=$5
shift 6
tests='AtomsTest.*:ExposureTest.*:ReadingsTest.*:FittingsTest.*:LifeTest.*:CountdownTest.*:FollowUpsTest.*:DeferralTest.*'
tests="$tests:DayByDayTest.*:ComputingErrorsTest.*:AheadTest.*:GroundTest.*:StandingTest.*"
tests="$tests:SourcesTest.*:ReachedTest.*:ValueTest.*:WeightedHoursTest.*:PlacedTest.*:SubjectOfTheBookTest.*"
tab=$(printf '\t')

rm -rf "$scratch" && mkdir -p "$scratch" || exit 1

# Puts $3 for the only $2 in file $1, into file $4.
plant() {
    OLD=$2 NEW=$3 awk '
        BEGIN { old = ENVIRON["OLD"]; new = ENVIRON["NEW"] }
        {
            at = index($0, old)
            if (at > 0) {
                ++found
                rest = substr($0, at + length(old))
                if (index(rest, old) > 0) ++found
                $0 = substr($0, 1, at - 1) new rest
            }
            print
        }
        END { exit found == 1 ? 0 : 1 }' "$1" > "$4"
}

run_tests() {
    timeout 120 "$scratch/tests" --gtest_filter="$tests" --gtest_fail_fast --gtest_brief=1 > "$scratch/out" 2>&1
}

"$compiler" -o "$scratch/tests" "@$objects" "$library" "$@" 2> "$scratch/log" || { cat "$scratch/log"; exit 1; }
run_tests || { echo "the tests fail without a mutant:"; tail -20 "$scratch/out"; exit 1; }

planted=0 killed=0 wrong=0
while IFS="$tab" read -r file old new; do
    case $file in ''|'#'*) continue ;; esac
    planted=$((planted + 1))
    copy="$scratch/mutant.cpp"
    if ! plant "$source_dir/$file" "$old" "$new" "$copy"; then
        echo "DOES NOT APPLY  $file: $old"
        wrong=$((wrong + 1))
    elif ! "$compiler" -std=c++20 -I"$source_dir" -c -o "$scratch/mutant.o" "$copy" 2> "$scratch/log" ||
        ! "$compiler" -o "$scratch/tests" "@$objects" "$scratch/mutant.o" "$library" "$@" 2>> "$scratch/log"; then
        echo "DOES NOT BUILD  $file: $new"
        head -5 "$scratch/log"
        wrong=$((wrong + 1))
    elif run_tests; then
        echo "SURVIVED        $file: $old  ->  $new"
    else
        killed=$((killed + 1))
    fi
done < "$source_dir/tests/core/mutants/mutants.list"
echo "$killed of $planted mutants killed"
[ "$wrong" -eq 0 ] && [ "$killed" -eq "$planted" ] && [ "$planted" -ge 30 ]
