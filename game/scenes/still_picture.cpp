#include "game/scenes/still_picture.h"

#include <SFML/Graphics/RenderTexture.hpp>
#include <cmath>
#include <cstdio>

#include "game/scenes/attempt_shelf.h"
#include "game/scenes/canvas.h"
#include "game/scenes/level_list.h"
#include "game/scenes/page_picture.h"
#include "game/scenes/palette.h"
#include "game/session/replay.h"

namespace halfdrop {

namespace {

Tick tick_at(double at_s) { return static_cast<Tick>(std::llround(at_s * kTicksPerSecond)); }

Result<Session> session_of_attempt(const std::string& path, const Options& options) {
  const auto file = read_attempt(path);
  if (!file) return tl::unexpected(file.error());
  for (const std::string& warning : file->warnings) std::fprintf(stderr, "%s\n", warning.c_str());
  return replay(file->attempt, {}, options.at_s ? tick_at(*options.at_s) : kLongestAttempt).session;
}

Result<Session> session_of(const Options& options) {
  const std::string path = find_level(options.level);
  if (looks_like_attempt(path)) return session_of_attempt(path, options);
  auto level = read_level(path);
  if (!level) return tl::unexpected(level.error());
  Session session(std::move(*level), options.seed.value_or(1), options.alias,
                  options.way.value_or(Way::independent));
  const Tick until = tick_at(options.at_s.value_or(0.0));
  while (session.state().tick < until) session.tick();
  return session;
}

void print(const std::vector<std::pair<std::string, Rect>>& places) {
  for (const auto& [name, r] : places) {
    std::printf("%s %.0f %.0f %.0f %.0f\n", name.c_str(), static_cast<double>(r.x), static_cast<double>(r.y),
                static_cast<double>(r.w), static_cast<double>(r.h));
  }
}

}  // namespace

int report(const std::vector<Fault>& faults) {
  int status = 1;
  for (const Fault& fault : faults) {
    std::fprintf(stderr, "%s\n", to_string(fault).c_str());
    if (fault.kind == FaultKind::cannot_open || fault.kind == FaultKind::cannot_parse) status = 3;
  }
  return status;
}

int draw_into(const std::string& file, const Options& options, sf::Color ground,
              const std::function<void(sf::RenderTarget&, const Fonts&)>& draw) {
  const auto fonts = Fonts::load();
  if (!fonts) {
    std::fprintf(stderr, "%s\n", fonts.error().c_str());
    return 1;
  }
  sf::RenderTexture target;
  if (!target.create(options.width, options.height)) {
    std::fprintf(stderr, "Cannot make a picture of %ux%u.\n", options.width, options.height);
    return 1;
  }
  target.clear(ground);
  draw(target, *fonts);
  target.display();
  if (target.getTexture().copyToImage().saveToFile(file)) return 0;
  std::fprintf(stderr, "%s: cannot write this picture\n", file.c_str());
  return 3;
}

int draw_still(const Options& options) {
  auto session = session_of(options);
  if (!session) return report(session.error());
  if (!options.page.empty()) return draw_page(options, *session);
  PlayScene scene(std::move(*session), std::nullopt, options.play);
  return draw_into(options.picture, options, palette::wall,
                   [&](sf::RenderTarget& target, const Fonts& fonts) {
                     Canvas canvas(target, fonts);
                     scene.hide_words();
                     scene.draw(canvas);
                   });
}

int print_places(const Options& options) {
  if (options.level.empty()) {
    print(LevelList::read(options.folder).places());
    return 0;
  }
  auto session = session_of(options);
  if (!session) return report(session.error());
  std::vector<std::pair<std::string, Rect>> before = SafetyPage(session->level(), Way::independent).places();
  for (auto& place : before) place.first.insert(0, "before/");
  print(before);
  print(PlayScene(std::move(*session), std::nullopt, options.play).places());
  return 0;
}

}  // namespace halfdrop
