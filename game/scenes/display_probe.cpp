#include "game/scenes/display_probe.h"

#include <X11/Xlib.h>

#include <cstdlib>
#include <memory>

namespace halfdrop {

std::optional<std::string> display_fault() {
  const std::string instead = "; halfdrop-desk works without a window (halfdrop-desk --help).";
  // Held until the program ends: a server whose last client leaves resets itself, just when SFML comes to it.
  static const std::unique_ptr<Display, int (*)(Display*)> display(XOpenDisplay(nullptr), XCloseDisplay);
  if (display == nullptr) {
    const char* const name = std::getenv("DISPLAY");
    const std::string which = name != nullptr && *name != '\0' ? " at DISPLAY=" + std::string(name) : "";
    return "No display to open a window on" + which + instead;
  }
  int opcode = 0, event = 0, error = 0;
  const bool has_glx = XQueryExtension(display.get(), "GLX", &opcode, &event, &error) != 0;
  if (!has_glx) return "The display cannot draw with OpenGL (no GLX extension)" + instead;
  return std::nullopt;
}

}  // namespace halfdrop
