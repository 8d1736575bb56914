#pragma once
// How a pair of hands works. The demonstrator's own habits are sound; a mistake changes one of them.

namespace halfdrop {

struct Habits {
  bool wears_goggles = true;
  bool rinses_burette = true;               ///< where it stands wet, with what it is to hold
  bool rinses_burette_with_sample = false;  ///< with the wrong bottle
  bool rinses_pipette = true;               ///< where it stands wet, with what it is to measure
  bool leaves_last_drop = true;             ///< in the pipette; otherwise it is blown out
  bool rinses_flask_with_sample = false;    ///< before every run
  bool fills_jet = true;                    ///< opens the tap after filling until no air is left in the jet
  bool fills_jet_slowly = false;            ///< only until it drips
  bool lifts_funnel_out = true;             ///< before the first reading
  bool fills_for_every_run = false;         ///< not only when too little is left
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
  double eye_too_high_at_end_mm = 0.0;
};

}  // namespace halfdrop
