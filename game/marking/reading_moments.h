#pragma once
// Finds, for every run of the sheet, the two moments at which the burette was read, and the flask's story between.

#include <map>
#include <optional>
#include <string>

#include "game/marking/titre_breakdown.h"
#include "game/marking/written_number.h"
#include "game/session/session.h"

namespace halfdrop {

struct RunReadings {
  std::optional<ReadingMoment> initial, final;
  FlaskStory story;
  [[nodiscard]] bool complete() const { return initial && final; }
};

/// Fed with every change of a replay, in order, after it was applied.
class ReadingMoments {
 public:
  void after_change(const Session& session, const Change& change);
  /// By run name; only runs of which something was written.
  [[nodiscard]] const std::map<std::string, RunReadings>& runs() const { return runs_; }

 private:
  void written(const Session& session, const Writing& writing);
  void final_written(const Session& session, const std::string& run, const ReadingMoment& moment);

  std::map<std::string, RunReadings> runs_;
  std::map<std::string, Ledger> started_;  ///< books when the flask of a run with a final reading was begun
  Ledger flask_begun_;                     ///< books when the present flask was begun
  Tick emptied_at_ = -1;                   ///< when the flask was last emptied
};

/// A writing further off the scale than this is a correction on paper, not a new reading.
inline constexpr double kCorrectionOnPaper_cm3 = 0.5;

}  // namespace halfdrop
