#pragma once
// What is perceived, in words: for people who cannot see the picture or its colours, and for tests.

#include <string>

#include "game/session/view.h"

namespace halfdrop {

/// "colourless", "faint pink", "pale yellow", "pink", "deep blue": a liquid's colour against its backdrop
/// alone.
[[nodiscard]] std::string colour_words(const Rgb& seen, const Rgb& backdrop);
/// The same as it is shown, in the language in force: "pale pink".
[[nodiscard]] std::string shown_colour(const Rgb& seen, const Rgb& backdrop);

/// "t=12.50 reading=0.15 level=+2.1mm drops=1.0/s hanging=0.40 flask=colourless streak=pink jet=full ..."
[[nodiscard]] std::string senses_line(const View& view);

/// Says a line when something that can be perceived changed, and at least every 0.25 s of the bench's time.
class SensesVoice {
 public:
  /// The line to say now; empty when there is nothing new.
  [[nodiscard]] std::string hear(const View& view);

 private:
  double last_s_ = -1.0;
  std::string last_;
};

}  // namespace halfdrop
