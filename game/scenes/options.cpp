#include "game/scenes/options.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cmath>
#include <cstdio>

#include "game/level/level.h"
#include "game/level/text_catalogue.h"
#include "game/scenes/page_picture.h"

namespace halfdrop {

namespace {

constexpr int kWrongArguments = 2;
constexpr unsigned kSmallest = 320, kLargest = 7680;

/// CLI11's own range lets through what is no number.
CLI::Validator within(double low, double high) {
  return CLI::Range(low, high) & CLI::Validator(
                                     [](const std::string& text) {
                                       double value = 0.0;
                                       const bool number =
                                           CLI::detail::lexical_cast(text, value) && std::isfinite(value);
                                       return number ? std::string() : text + " is no number";
                                     },
                                     "");
}

/// CLI11 reads "-1" as the largest whole number.
CLI::Validator whole_number() {
  return {[](const std::string& text) {
            const bool digits = !text.empty() && text.find_first_not_of("0123456789") == std::string::npos;
            return digits ? std::string() : text + " is no whole number from 0 to 2^64 - 1";
          },
          ""};
}

/// "1280x720"
std::string read_size(const std::string& text, unsigned& width, unsigned& height) {
  char rest = '\0';
  if (std::sscanf(text.c_str(), "%ux%u%c", &width, &height, &rest) != 2)
    return "expected a size such as 1280x720";
  const bool fits = width >= kSmallest && height >= kSmallest / 2 && width <= kLargest && height <= kLargest;
  return fits ? "" : "a size between 320x160 and 7680x7680";
}

/// What does not go together; empty when all does.
std::string wrong_together(const CLI::App& app, const Options& options) {
  const bool picture = app.count("--picture") > 0, strip = app.count("--strip") > 0;
  if (strip && picture) return "--strip and --picture exclude each other";
  if (strip && options.level.empty()) return "--strip needs a level";
  if (picture && options.level.empty()) return "--picture needs a level or an attempt";
  return "";
}

std::string joined(const std::vector<std::string>& names) {
  std::string all;
  for (const std::string& name : names) all += (all.empty() ? "" : ", ") + name;
  return all;
}

void add_language(CLI::App& app, Options& options) {
  const std::vector<std::string> spoken = languages(data_folder());
  app.add_option("--language", options.language,
                 "of the words on screen: " + joined(spoken) + " (default en)")
      ->check(CLI::Validator(
          [spoken](const std::string& name) {
            const bool known = std::find(spoken.begin(), spoken.end(), name) != spoken.end();
            return known ? std::string() : "no language \"" + name + "\"; there are " + joined(spoken);
          },
          ""));
}

/// Options that draw a file instead of playing.
void add_drawing(CLI::App& app, Options& options) {
  app.add_option("--picture", options.picture, "draw one frame into this PNG file and exit");
  app.add_option("--at", options.at_s, "moment of the picture, seconds")
      ->check(within(0.0, 14400.0))
      ->needs("--picture");
  app.add_option(
         "--page", options.page,
         "picture of a page about an attempt: sheet, example, question, marks, titres, result, uncertainty, "
         "findings, harmless")
      ->check(CLI::IsMember(page_names()))
      ->needs("--picture");
  app.add_option("--strip", options.strip,
                 "draw one drop near the endpoint, swirled and not, into this PNG file and exit");
}

}  // namespace

std::variant<Options, int> read_options(int count, const char* const* arguments) {
  Options options;
  std::string size, way;
  CLI::App app{"Halfdrop: a practice bench for burette technique", "halfdrop"};
  app.add_option("level", options.level, "a level by path or name; with --picture an attempt as well");
  app.add_option("--alias", options.alias, "name written into the attempt");
  add_language(app, options);
  app.add_flag("--projector", options.play.projector, "larger words");
  app.add_option("--way", way, "of playing: guided, independent or assessed")
      ->check(CLI::IsMember({"guided", "independent", "assessed"}));
  app.add_option("--seed", options.seed, "seed of unknown and glass")->check(whole_number());
  app.add_option("--time-scale", options.play.time_scale, "bench seconds a second")
      ->check(within(0.01, 60.0));
  app.add_option("--size", size, "window or picture, such as 1280x720");
  app.add_flag("--fullscreen", options.fullscreen, "the whole screen (F11 toggles)");
  app.add_option("--folder", options.folder, "where attempts are kept");
  app.add_flag("--say", options.play.say, "what is perceived, as lines on standard output");
  app.add_flag("--places", options.places, "print what can be clicked, with x y w h, and exit");
  add_drawing(app, options);
  try {
    app.parse(count, arguments);
  } catch (const CLI::ParseError& fault) {
    return app.exit(fault) == 0 ? 0 : kWrongArguments;
  }
  std::string wrong = size.empty() ? "" : read_size(size, options.width, options.height);
  if (!wrong.empty()) wrong = "--size: " + wrong;
  if (wrong.empty()) wrong = wrong_together(app, options);
  if (!wrong.empty()) {
    std::fprintf(stderr, "%s\n", wrong.c_str());
    return kWrongArguments;
  }
  options.way = way_from_name(way);
  if (options.folder.empty()) options.folder = attempts_folder();
  return options;
}

}  // namespace halfdrop
