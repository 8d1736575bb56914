#include <cstdio>

#include "game/level/say.h"
#include "game/level/text_catalogue.h"
#include "game/scenes/app.h"
#include "game/scenes/display_probe.h"
#include "game/scenes/drop_strip.h"
#include "game/scenes/still_picture.h"
#include "game/session/keep_memory.h"

int main(int count, char** arguments) {
  using namespace halfdrop;
  keep_freed_memory();
  const auto read = read_options(count, arguments);
  if (const int* status = std::get_if<int>(&read)) return *status;
  const auto& options = std::get<Options>(read);
  const auto words = read_language(data_folder(), options.language);
  if (!words) {
    for (const Fault& fault : words.error()) std::fprintf(stderr, "%s\n", to_string(fault).c_str());
    return exit_status(words.error());
  }
  speak(*words);
  if (options.places) return print_places(options);
  if (const auto fault = display_fault()) {
    std::fprintf(stderr, "%s\n", fault->c_str());
    return 1;
  }
  if (!options.strip.empty()) return draw_strip(options);
  if (!options.picture.empty()) return draw_still(options);
  const auto fonts = Fonts::load();
  if (!fonts) {
    std::fprintf(stderr, "%s\n", fonts.error().c_str());
    return 1;
  }
  return App(options, *fonts).run();
}
