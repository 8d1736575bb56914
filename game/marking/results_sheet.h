#pragma once
// What the player wrote, cell by cell, with everything that stood there before.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "game/marking/written_number.h"
#include "game/session/attempt.h"

namespace halfdrop {

struct Entry {
  Tick tick = 0;
  std::string text;  ///< empty: struck out
};

class ResultsSheet {
 public:
  /// In the order of writing.
  void write(Tick tick, const Writing& writing);

  /// What stands in a cell now; empty if nothing.
  [[nodiscard]] std::string text(const std::string& cell) const;
  /// The same as a number; nothing when it is none.
  [[nodiscard]] std::optional<double> number(const std::string& cell) const;
  /// When a cell was last written; 0 if never.
  [[nodiscard]] Tick written_at(const std::string& cell) const;
  /// Everything ever written into a cell, oldest first.
  [[nodiscard]] const std::vector<Entry>& history(const std::string& cell) const;
  /// How often something that stood in a cell was replaced by something else or struck out.
  [[nodiscard]] int corrections(const std::string& cell) const;

  /// Something stands in one of the run's cells.
  [[nodiscard]] bool begun(const std::string& run) const;
  [[nodiscard]] bool ticked(const std::string& run) const { return text(run + "/counts") == "yes"; }

 private:
  std::map<std::string, std::vector<Entry>> cells_;
};

}  // namespace halfdrop
