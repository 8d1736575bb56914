#pragma once
// How a standard was made up: as it stood just before its flask was first taken from, or stands at the end.

#include "game/session/session.h"

namespace halfdrop {

struct MadeUp {
  bool taken_from = false;
  Tick at = 0;
  double in_flask_cm3 = 0.0;
  double off_line_cm3 = 0.0;  ///< more than the flask holds at its line
  double eye_above_mm = 0.0;  ///< over the line, when anything last came in
  int poured_over = 0;
  int washings = 0;               ///< since solid was last tipped out
  int inversions = 0;             ///< since anything last came in
  double tipped_out_g = 0.0;      ///< of the solid
  double left_in_beaker = 0.0;    ///< ... a share of that
  double strength_mol_cm3 = 0.0;  ///< of the flask, all of it together
};

/// Fed with every tick and every deed of a replay, in order.
class StandardWatch {
 public:
  void after_tick(const Session& session);
  void after_deed(const Session& session, Deed deed);
  [[nodiscard]] const MadeUp& made_up() const { return now_; }

 private:
  void look(const Session& session);

  MadeUp now_;
  Quanta in_flask_ = 0;
};

}  // namespace halfdrop
