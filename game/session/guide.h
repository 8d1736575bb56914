#pragma once
// The guide of an attempt that is played guided: what to do next, and why.
//
// It goes by what a player can know: what an eye at its height sees (Senses), what stands where, what the
// hands hold, what was done and what was written. Never by the true reading, the unknown or the books; and it
// does not touch the bench.
//
// Shown as long as it helps, then withdrawn. A step is *known* once it was done before its turn came, or
// twice while it was shown. A known step is not shown again, unless for kStuck_s of bench time nothing went
// forward, something else was done in its place, or the player asks; it is then shown until it is done.

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "game/session/view.h"

namespace halfdrop {

/// What the guide goes by.
struct GuideFacts {
  const Level* level = nullptr;
  Senses seen;
  Hands hands;
  bool coat_on = false, goggles_on = false, funnel_in = false, tile_laid = false, pipette_full = false;
  bool over_edge = false;            ///< the burette
  bool top_below_eye = false;        ///< ... its top, of one who stands at the bench
  Bottle in_hand = Bottle::titrant;  ///< that is poured from

  // What was done, from the log.
  /// Into the flask since it was last emptied.
  int aliquots = 0, indicator_drops = 0, second_indicator_drops = 0;
  int rinses = 0;                     ///< times that liquid was turned about in the burette
  bool turned_about = false;          ///< ... what is in it now
  bool pipette_rinsed = false;        ///< with sample, or used
  bool pipette_let_in = false;        ///< by hand: it was let run over the flask, and not lifted away since
  int poured_over = 0, washings = 0;  ///< into the volumetric flask: solution, and rinses of its beaker
  bool standard_used = false;         ///< a pipette was rinsed or filled with it, or it was poured out
  std::string bottle_before, bottle_after;  ///< weighings, as written
  double weighed_out_g = 0.0;               ///< what the balance shows less than at first
  bool let_in = false;                      ///< the tap was open over this aliquot
  bool let_in_on = false;                   ///< ... since its first endpoint was written
  bool flask_spent = false;                 ///< a run was read off with it, and it was not rinsed since
  double undisturbed_s = 0;    ///< since the tap was shut or a drop touched off; 0 while the tap is open
  bool colour_lasted = false;  ///< stood for half a minute after the last titrant of this run (from Guide)

  // What was written. Readings count once they are plain numbers.
  std::string run;  ///< to be done or going on: "trial", "1" ...; empty: runs are over
  std::optional<double> initial_cm3, final_cm3;  ///< of that run
  std::optional<double> first_cm3;               ///< ... at the first of two endpoints
  bool first_titre_written = false;
  std::optional<double> expected_cm3;        ///< least titre so far
  std::optional<double> expected_first_cm3;  ///< ... of first titres
  std::vector<std::string> counting;         ///< the two accurate runs nearest to each other
  bool agree = false;                        ///< ... within 0.10 cm3
  int ticked = 0;
  std::string next_line;  ///< prompt of the first line of the working that is empty
};
/// `seen` must be the session's own view.
[[nodiscard]] GuideFacts guide_facts(const Session& session, const View& seen);

/// One row of the table of steps.
struct GuideStep {
  std::string_view id;
  bool (*due)(const GuideFacts&);            ///< belongs to this stage of the work
  bool (*done)(const GuideFacts&);           ///< what it is to bring about is there
  std::string (*words)(const GuideFacts&);   ///< short and imperative
  std::string (*reason)(const GuideFacts&);  ///< one sentence
  std::optional<Deed> deed, other_deed;      ///< that serve it
  std::string_view cells;                    ///< whose writing serves it: "/initial"
};
/// In the order of work: coat to handing in.
[[nodiscard]] std::span<const GuideStep> guide_steps();
/// The first that is due and not done; null when there is none.
[[nodiscard]] const GuideStep* next_step(const GuideFacts& facts);
/// Titrant was let in, and the flask shows what the level calls its endpoint, in as many places as not.
[[nodiscard]] bool shows_change(const GuideFacts& facts);
/// The endpoint that is worked for is the second of two.
[[nodiscard]] bool second_endpoint_due(const GuideFacts& facts);

inline constexpr double kStuck_s = 20.0;
inline constexpr double kColourLasts_s = 30.0;

class Guide {
 public:
  struct Shown {
    std::string_view id;
    std::string words, reason;
  };
  /// A look at the bench, some times a second. Precondition: no drill.
  void see(const Session& session, const View& seen);
  /// Shows the next step, known or not.
  void ask() { called_ = true; }
  /// What to show now; nothing: it keeps silent.
  [[nodiscard]] const std::optional<Shown>& shown() const { return shown_; }
  /// The next step, shown or not; empty when there is none.
  [[nodiscard]] std::string_view next() const { return next_; }
  [[nodiscard]] bool knows(std::string_view step) const;

 private:
  struct Memory {
    bool open = false;  ///< was due and not done at the last look
    int done_shown = 0;
    bool known = false;
  };
  void watch_colour(GuideFacts& facts);
  void learn(const GuideFacts& facts, std::span<const Change> fresh);
  void watch_progress(const GuideFacts& facts, const GuideStep* step, std::span<const Change> fresh);

  std::map<std::string_view, Memory> memory_;
  std::string_view next_;
  std::optional<Shown> shown_;
  bool called_ = false;  ///< the next step is to be shown although it is known
  double forward_at_s_ = 0.0;
  std::size_t changes_seen_ = 0;
  std::string lasted_in_;  ///< run whose colour has lasted
};

}  // namespace halfdrop
