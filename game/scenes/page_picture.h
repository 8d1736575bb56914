#pragma once
// A page about an attempt as a picture: what the window shows beside and after the bench.

#include <string>
#include <vector>

#include "game/scenes/options.h"
#include "game/session/session.h"

namespace halfdrop {

/// "sheet" (brought forward), "example" (with the working on other figures), "question", "marks", and parts
/// of the marks by where they begin: "titres", "result", "uncertainty", "findings", "harmless".
[[nodiscard]] const std::vector<std::string>& page_names();

/// Draws options.page of a session as it stands into options.picture; returns the exit status.
[[nodiscard]] int draw_page(const Options& options, const Session& session);

}  // namespace halfdrop
