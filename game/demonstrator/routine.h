#pragma once
// The order of work: dress, then for each run flask, burette, first reading, titration, last reading; then
// paper.

#include "game/demonstrator/habits.h"
#include "game/demonstrator/moves.h"
#include "game/demonstrator/paper.h"
#include "game/demonstrator/titration.h"

namespace halfdrop {

class Routine {
 public:
  Routine(AtBench& bench, const Habits& habits)
      : bench_(bench), habits_(habits), moves_(bench, habits), paper_(bench) {}

  void dress();
  void trial();
  /// Accurate runs until two titres agree within 0.10 cm3 or the sheet is full.
  void accurate_runs();
  void finish();
  /// Ready for a first reading: beaker, funnel, jet, drop.
  void fill_burette();

 private:
  void prepare_flask();
  void make_room_in_flask();
  void pour_above(double reading_cm3);
  void fill_jet();
  void drip_jet_full();
  void drain_to(double reading_cm3);
  void clear_tip();
  [[nodiscard]] bool enough_left() const;
  void make_burette_ready();
  int read(double eye_too_high_mm);
  int read_from(double eye_mm);
  void begin_run(const std::string& run);
  void end_run(const std::string& run, Titration& titration);
  void mop_up();

  AtBench& bench_;
  Habits habits_;
  Moves moves_;
  Paper paper_;
  bool filled_before_ = false;
  int aliquots_in_flask_ = 0;
  double eye_at_start_mm_ = 0.0;   ///< of the run's first reading
  int last_reading_ = 0;           ///< hundredths
  std::vector<std::string> done_;  ///< accurate runs
};

}  // namespace halfdrop
