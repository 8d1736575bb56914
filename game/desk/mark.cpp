#include <ostream>

#include "game/desk/commands.h"
#include "game/marking/marks.h"
#include "game/records/attempt_file.h"
#include "game/records/marks_json.h"

namespace halfdrop::desk {

namespace {

int mark_one(const std::string& path, const MarkOptions& options, Streams streams) {
  const Result<AttemptFile> file = read_attempt(path);
  if (!file) return report(file.error(), streams);
  for (const std::string& warning : file->warnings) streams.err << "warning: " << warning << '\n';
  const MarkedAttempt marked = mark(file->attempt);
  if (options.json) {
    streams.out << marks_json(marked, path) << '\n';
  } else if (options.csv) {
    streams.out << marks_csv_row(marked, path) << '\n';
  } else {
    streams.out << marks_text(marked, path);
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
  for (const std::string& path : options.attempts) {
    if (!options.json && !options.csv && !statuses.empty()) streams.out << '\n';
    statuses.push_back(mark_one(path, options, streams));
  }
  return batch_status(statuses);
}

}  // namespace halfdrop::desk
