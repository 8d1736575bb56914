#pragma once
// The order of work: dress, then for each run flask, burette, first reading, titration, last reading; then
// paper.

#include "game/demonstrator/habits.h"
#include "game/demonstrator/moves.h"
#include "game/demonstrator/pencil.h"
#include "game/demonstrator/titration.h"

namespace halfdrop {

class Routine {
 public:
  Routine(AtBench& bench, const Habits& habits)
      : bench_(bench), habits_(habits), moves_(bench, habits), pencil_(bench, habits_) {}

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
  void fill_jet_late();
  /// The figure that the hands make of what they see from where the eye is.
  int read(bool top);
  int first_reading();
  int last_reading();
  /// Lets drops fall where the flask is not yet.
  void drip_before_flask();
  void begin_run(const std::string& run);
  /// Touched off, lasted, still: what stands on the scale at an endpoint.
  int read_endpoint(Titration& titration);
  /// First endpoint read and written, second indicator in. What the scale showed since the start.
  void pass_first_endpoint(const std::string& run, Titration& titration);
  void add_second_indicator();
  void end_run(const std::string& run, Titration& titration);
  [[nodiscard]] bool writes_down(const std::string& run) const;
  /// Habits of one accurate run: some mistakes are not made in every run.
  [[nodiscard]] Habits habits_of(int number) const;
  void accurate_run(int number);
  [[nodiscard]] bool another_run() const;
  void adjust_titres();
  [[nodiscard]] std::vector<std::string> counted() const;
  void mop_up();

  AtBench& bench_;
  Habits habits_;
  Moves moves_;
  Pencil pencil_;
  bool filled_before_ = false;
  int aliquots_in_flask_ = 0;
  double eye_at_start_mm_ = 0.0;   ///< of the run's first reading
  int began_at_ = 0;               ///< what stood there then, hundredths
  int stands_at_ = 0;              ///< hundredths, as last seen, whatever was written
  std::optional<int> run_took_;    ///< hundredths, of the run that shows where the endpoint lies
  std::optional<int> first_took_;  ///< ... of its first endpoint, where there are two
  std::vector<std::string> done_;  ///< accurate runs
};

}  // namespace halfdrop
