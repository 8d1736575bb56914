#pragma once
// How a pair of hands works. The demonstrator's own habits are sound; a mistake changes one of them.

namespace halfdrop {

/// How the burette is read and the readings written.
struct ReadingHabits {
  bool writes_zero_unread = false;  ///< 0.00 as the first reading of every run, without a look
  bool top_at_start = false;        ///< the upper edge of the meniscus is read at the first reading
  bool top_at_end = false;          ///< ... at the last
  bool upwards = false;             ///< from the printed figure below, as if the scale ran up
  int decimals = 2;                 ///< of readings and titres
  bool written_at_once =
      true;  ///< otherwise the last reading is carried in the head until the flask is clean
  bool in_each_others_place = false;  ///< the first reading into the last one's row, and the other way about
};

/// What is made of the readings.
struct WorkingHabits {
  bool final_is_titre = false;             ///< nothing is subtracted
  bool adjusts_titres = false;             ///< changes a last reading afterwards, so that the titres agree
  bool titre_from_first_endpoint = false;  ///< the first endpoint's reading is taken off, not the initial one
  bool takes_first_titre_off_once = false;  ///< where the working wants it twice
  bool omits_ratio = false;
  bool omits_dilution = false;
  bool omits_thousand = false;       ///< between cm3 and dm3
  bool aliquot_for_titre = false;    ///< and titre for aliquot
  bool rounds_early = false;         ///< two significant figures all the way down
  bool copies_every_figure = false;  ///< of the result, as a calculator shows it
};

/// When another accurate run is made.
enum class Repeats : unsigned char { until_concordant, twice_whatever, once };

/// How a standard is made up.
struct MakingUpHabits {
  int washings = 3;           ///< the beaker rinsed into the flask
  bool to_bottom = true;      ///< bottom of the meniscus on the line; otherwise its upper edge
  double past_line_mm = 0.0;  ///< filled on beyond it
  int inversions = 15;
};

struct Habits {
  bool wears_goggles = true;
  bool rinses_burette = true;               ///< where it stands wet, with what it is to hold
  bool rinses_burette_with_sample = false;  ///< with the wrong bottle
  bool rinses_pipette = true;      ///< with what it is to measure; otherwise with water before every aliquot
  bool leaves_last_drop = true;    ///< in the pipette; otherwise it is blown out
  double eye_above_line_mm = 0.0;  ///< while a pipette is let down by hand
  bool wipes_pipette = true;
  bool leans_pipette = true;              ///< its tip on the flask's wall while it runs out
  bool drains_pipette = true;             ///< waits until the film inside has run down
  bool draws_air = false;                 ///< lifts its tip out of the liquid too soon, and draws on
  bool rinses_flask_with_sample = false;  ///< before every run
  bool lowers_to_fill = true;             ///< the burette, over the bench's edge, where the level has it so
  bool fills_jet = true;                  ///< opens the tap after filling until no air is left in the jet
  bool fills_jet_slowly = false;          ///< only until it drips
  bool lifts_funnel_out = true;           ///< before the first reading
  bool fills_for_every_run = false;       ///< not only when too little is left
  bool swirls = true;
  double swirl = 0.8;  ///< how hard: 1 is as hard as one can
  bool lays_tile = true;
  bool trusts_a_tint = true;        ///< otherwise a colour is believed only once it is plain
  bool keeps_flask_in_line = true;  ///< otherwise it is drawn aside to be looked at while the tap still drips
  bool rinses_wall = true;          ///< keeps drops off the flask's neck and washes it down
  bool waits_to_fade = true;  ///< otherwise the first flash that lingers a moment is taken for the endpoint
  bool slows_down = true;     ///< drop by drop near the end of an accurate run
  bool leaves_drop_hanging =
      false;                  ///< lets the next drop swell before shutting the tap, and reads with it there
  bool cleans_flask = true;   ///< empties and rinses it after every run
  bool counts_trial = false;  ///< ticks the trial and takes it into the mean
  bool waits = true;          ///< for the film to run down and the colour to last, before the last reading
  bool moves_eye = true;      ///< to the meniscus for the last reading; otherwise as for the first
  double eye_too_high_at_start_mm = 0.0;
  double eye_too_high_at_end_mm = 0.0;  ///< negative: too low, as at the start
  bool wears_coat = true;
  bool takes_goggles_off_early = false;  ///< after the trial
  bool wipes_bench = true;
  bool uses_funnel = true;
  bool shuts_tap_before_pouring = true;  ///< otherwise only when it is seen to run through
  double starts_at_cm3 = 0.4;  ///< on the scale, and far enough down for an eye that looks down on it
  bool fills_jet_after_reading = false;
  bool begins_with_drop_hanging = false;
  bool opens_tap_before_flask = false;  ///< the first drops fall beside it
  bool tops_up_in_run = false;          ///< pours more titrant in half way, and counts it nowhere
  int indicator_drops = 3;
  int more_indicator_each_run = 0;
  // Where a flask has two endpoints.
  bool adds_second_indicator = true;
  bool second_indicator_at_start = false;
  int drops_past_first_endpoint = 0;  ///< in every accurate run
  bool chases_fade = false;           ///< adds a drop whenever the colour has become paler
  int drops_past_tint = 0;            ///< more, in every second accurate run
  bool hurries_second_run = false;  ///< runs the second accurate run like a trial, until the colour is plain
  bool makes_trial = true;
  bool writes_trial_down = true;
  Repeats repeats = Repeats::until_concordant;
  MakingUpHabits making_up;
  ReadingHabits reading;
  WorkingHabits working;
};

}  // namespace halfdrop
