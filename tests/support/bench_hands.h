#pragma once
// Hands for tests: builds attempts through a Session, well unless told otherwise. Unlike a demonstrator they
// may look into the state, so that a test knows what it did to the last drop.

#include <string>
#include <vector>

#include "game/session/session.h"

namespace halfdrop::test {

/// How one run is done; each field is right unless changed.
struct RunPlan {
  double past_cm3 = 0.0;      ///< where to stop: titrant past equivalence at least
  double eye_above_mm = 0.0;  ///< at both readings, above the meniscus
  double swirl = 0.8;
  double last_tap_drops_per_s = 1.5;
  double drop_by_drop_cm3 = 0.8;  ///< before the end
  int indicator_drops = 2;
  int aliquots = 1;
  bool tile = true;
  bool fill_jet = true;
  bool funnel_out = true;
  bool touch_off = true;          ///< before the final reading
  double left_hanging_cm3 = 0.0;  ///< let out at the end and left at the tip
  bool wash_down = true;
  double waits_s = 12.0;  ///< before the final reading
  bool rinse_after = true;
};

/// The attempt with what is written in a cell changed, wherever it is written; an empty text strikes it out.
[[nodiscard]] Attempt with_text(Attempt attempt, const std::string& cell, const std::string& text);
/// The attempt with one more writing into a cell, `later_s` after it was last written or at the end if that
/// is sooner.
[[nodiscard]] Attempt rewritten(Attempt attempt, const std::string& cell, const std::string& text,
                                double later_s);

/// One hand somewhere, the others as they are.
[[nodiscard]] HandsChange held(std::optional<double> HandsChange::*hand, double value);

class BenchHands {
 public:
  /// Plays the level levels/01-spirit-vinegar.json.
  explicit BenchHands(std::uint64_t seed = 11);
  explicit BenchHands(const Level& level, std::uint64_t seed = 11);

  [[nodiscard]] Session& session() { return session_; }
  [[nodiscard]] const BenchState& bench() const { return session_.state(); }
  [[nodiscard]] const BenchSpec& spec() const { return session_.spec(); }

  void hold(const HandsChange& change);
  void act(Deed deed);
  void write(const std::string& cell, const std::string& text);
  void wait(double seconds);

  void protect();
  /// Pours until the meniscus stands above `reading_cm3`. With an open tap when `tap` is not 0.
  void fill_burette(double reading_cm3, double tap = 0.0, bool lift_funnel_out = true);
  /// Runs titrant into the beaker until the jet is full, and touches the last drop off there.
  void fill_jet();
  void prepare_flask(int indicator_drops, int aliquots = 1);
  /// Titrant in the flask past equivalence, cm3 of the label's strength.
  [[nodiscard]] double past_equivalence_cm3() const;
  /// A tap position that drips so often now.
  [[nodiscard]] double tap_for(double drops_per_s) const;
  void titrate(const RunPlan& plan);
  /// Brings the eye level (or so far above) and writes the nearest 0.05 of what it sees; returns the text.
  std::string read(const std::string& cell, double eye_above_mm = 0.0);
  /// One run from filling to titre.
  void run(const std::string& name, const RunPlan& plan = {});
  /// Ticks runs and writes the calculation rightly.
  void tick_and_calculate(const std::vector<std::string>& runs);
  Attempt hand_in();

  /// Trial, two accurate runs, calculation; not handed in. A plan for the accurate runs.
  void whole_attempt(const RunPlan& plan = {});

 private:
  Session session_;
};

/// With a coarser flask than a player's: quicker.
[[nodiscard]] Level spirit_vinegar();

/// What is in an account now, cm3.
[[nodiscard]] double in(const BenchHands& hands, Account account);

}  // namespace halfdrop::test
