#include <algorithm>
#include <ostream>

#include "game/desk/commands.h"
#include "game/marking/marks.h"
#include "game/records/attempt_file.h"
#include "game/records/marks_json.h"

namespace halfdrop::desk {

namespace {

/// What was marked so far, for second goes at a drill.
struct Marked {
  std::string path;
  Attempt attempt;
  DrillFigures drill;
};

std::optional<FirstGo> first_go(const std::vector<Marked>& earlier, const Attempt& now,
                                const std::optional<DrillFigures>& drill) {
  const auto first = std::find_if(earlier.begin(), earlier.end(),
                                  [&](const Marked& one) { return same_drill(one.attempt, now); });
  if (!drill || first == earlier.end()) return std::nullopt;
  return FirstGo{first->path, compare_goes(first->drill, *drill)};
}

int mark_one(const std::string& path, const MarkOptions& options, std::vector<Marked>& earlier,
             Streams streams) {
  const Result<AttemptFile> file = read_attempt(path);
  if (!file) return report(file.error(), streams);
  for (const std::string& warning : file->warnings) streams.err << "warning: " << warning << '\n';
  const MarkedAttempt marked = mark(file->attempt);
  const std::optional<FirstGo> first = first_go(earlier, file->attempt, marked.drill);
  if (marked.drill) earlier.push_back({path, file->attempt, *marked.drill});
  if (options.json) {
    streams.out << marks_json(marked, path, first) << '\n';
  } else if (options.csv) {
    streams.out << marks_csv_row(marked, path) << '\n';
  } else {
    streams.out << marks_text(marked, path, first);
  }
  if (marked.outcome.reproduced) return kDone;
  return report(
      {Fault{FaultKind::not_reproduced, path, "tick " + std::to_string(marked.outcome.first_difference),
             "not reproduced: " + marked.outcome.message}},
      streams);
}

}  // namespace

int mark_attempts(const MarkOptions& options, Streams streams) {
  if (options.csv) streams.out << marks_csv_header() << '\n';
  std::vector<int> statuses;
  std::vector<Marked> earlier;
  for (const std::string& path : options.attempts) {
    if (!options.json && !options.csv && !statuses.empty()) streams.out << '\n';
    statuses.push_back(mark_one(path, options, earlier, streams));
  }
  return batch_status(statuses);
}

}  // namespace halfdrop::desk
