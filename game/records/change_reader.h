#pragma once
// Reads the lines of an attempt after its first one. Internal to game/records.

#include <string>

#include "game/level/fields.h"
#include "game/session/action.h"

namespace halfdrop {

class ChangeReader {
 public:
  /// Appends to attempt.changes; both must outlive the reader.
  ChangeReader(Attempt& attempt, FaultList& faults) : attempt_(attempt), faults_(faults) {}

  /// Cells can be checked only against a sound level.
  void check_cells(bool yes) { check_cells_ = yes; }
  /// One line, parsed. `place` is put before the pointer of a fault: "line 12 ".
  void read(const Json& json, const std::string& place);

 private:
  void read_tick(Fields& fields, Tick& tick);
  HandsChange read_hands(const Json& json, const std::string& place);
  void read_hand(Fields& fields, std::string_view name, std::optional<double> HandsChange::*member,
                 HandsChange& change);
  void read_flask(Fields& fields, HandsChange& change);
  void check_hand(const HandsChange& one, const std::string& place, const Json& value);
  void read_deed(Fields& fields, Change& change);
  void read_writing(const Json& json, const std::string& place, Change& change);
  void read_ending(Fields& fields, Change& change);

  Attempt& attempt_;
  FaultList& faults_;
  Tick last_tick_ = 0;
  bool ended_ = false;
  bool check_cells_ = false;
};

}  // namespace halfdrop
