#include "game/scenes/safety_page.h"

#include <algorithm>
#include <array>

#include "game/level/say.h"
#include "game/scenes/page_pen.h"
#include "game/scenes/palette.h"
#include "game/scenes/words.h"

namespace halfdrop {

namespace {

constexpr Rect kSheet{72, 14, 1136, 692};
constexpr float kLeft = 112, kLeftWidth = 544, kRight = 700, kRightWidth = 468;
constexpr float kTop = 116;
constexpr float kStorySize = 18, kSafetySize = 16.5F, kSmallest = 14.5F, kLineOfSize = 1.33F;
constexpr Rect kStart{858, 646, 310, 44};
constexpr Rect kBack{708, 646, 134, 44};
constexpr Rect kFirstWay{kLeft, 428, kLeftWidth, 58};
constexpr float kWayStep = 66, kPageStep = 200;

struct WayWords {
  Phrase name, words;
};
constexpr std::array<WayWords, kWays> kWayWords = {{{"safety.guided", "safety.guided.words"},
                                                    {"safety.independent", "safety.independent.words"},
                                                    {"safety.assessed", "safety.assessed.words"}}};

Rect way_rect(std::size_t way) {
  Rect rect = kFirstWay;
  rect.y += kWayStep * static_cast<float>(way);
  return rect;
}

/// A warning triangle: a shape beside the words.
void draw_warning(Canvas& canvas, Point at) {
  canvas.polygon({{at.x + 10, at.y - 15}, {at.x + 21, at.y + 4}, {at.x - 1, at.y + 4}}, rgb(0xe8a33d));
  canvas.line({at.x + 10, at.y - 8}, {at.x + 10, at.y - 2}, 2.2F, palette::print);
  canvas.circle({at.x + 10, at.y + 1}, 1.3F, palette::print);
}

/// A paragraph of a column; sizes as shares of the column's.
struct Passage {
  std::string words;
  Face face = Face::regular;
  float size = 1.0F, indent = 0, gap_after = 0;
  bool warns = false;
};

float height_of(const Canvas& canvas, const Passage& passage, float width, float size) {
  const auto lines = canvas.wrapped(passage.words, width - passage.indent,
                                    {size * passage.size, palette::print, passage.face});
  return static_cast<float>(lines.size()) * size * passage.size * kLineOfSize + passage.gap_after;
}

/// As large as it fits, down to kSmallest; then what has no room is scrolled to. `place` begins at the first
/// baseline. Returns how much is out of sight.
float draw_column(Canvas& canvas, const Rect& place, const std::vector<Passage>& passages, float largest,
                  float scroll) {
  const auto height_at = [&](float size) {
    float height = 0;
    for (const Passage& passage : passages) height += height_of(canvas, passage, place.w, size);
    return height;
  };
  float size = largest;
  while (size > kSmallest && height_at(size) > place.h) size -= 0.5F;
  const float hidden = std::max(0.0F, height_at(size) - place.h);
  if (hidden > 0) canvas.clip({place.x - 4, place.y - largest, place.w + 8, place.h});
  float y = place.y - std::min(scroll, hidden);
  for (const Passage& passage : passages) {
    const float own = size * passage.size;
    if (passage.warns) draw_warning(canvas, {place.x, y});
    canvas.paragraph(passage.words, {place.x + passage.indent, y}, place.w - passage.indent,
                     own * kLineOfSize, {own, palette::print, passage.face});
    y += height_of(canvas, passage, place.w, size);
  }
  if (hidden <= 0) return 0;
  canvas.unclip();
  draw_scroll_bar(canvas, {place.right() + 10, place.y - largest, 7, place.h}, place.h + hidden, place.h,
                  std::min(scroll, hidden));
  return hidden;
}

void draw_way(Canvas& canvas, const Rect& at, const WayWords& words, std::size_t number, bool chosen) {
  canvas.rounded_rect(at, 8, chosen ? faded(palette::accent, 0.10) : rgb(0xffffff, 0.5));
  canvas.stroke(rounded_rect_points(at, 8), {chosen ? 2.4F : 1.0F, true},
                chosen ? palette::accent : palette::print_soft);
  const Point dot{at.x + 26, at.centre().y};
  canvas.circle(dot, 10, palette::accent);
  canvas.circle(dot, 8, palette::paper);
  if (chosen) canvas.circle(dot, 5, palette::accent);
  canvas.text(words.name, {at.x + 50, at.y + 24}, {19, palette::print, Face::bold});
  canvas.text(words.words, {at.x + 50, at.y + 46},
              fitted(canvas, words.words, at.w - 60, {17, palette::print}));
  canvas.text(std::to_string(number), {at.right() - 16, at.y + 24},
              {16, palette::accent, Face::bold, Align::right});
}

}  // namespace

std::vector<std::string> house_rules() {
  return {say("safety.rule.eyes"), say("safety.rule.height"), say("safety.rule.filler"),
          say("safety.rule.spills"), say("safety.rule.hands")};
}

std::string bottle_line(const BottleHazards& bottle) {
  std::string dissolved;
  for (const DissolvedHazard& one : bottle.dissolved) {
    if (&one != &bottle.dissolved.front()) dissolved += ", ";
    dissolved += words::fixed(one.percent, one.percent < 0.1 ? 3 : 2) + " % " + one.substance;
  }
  if (bottle.at_most) dissolved = say("safety.at_most", {{"dissolved", dissolved}});
  return dissolved + ": " + hazard_words(bottle) + (bottle.local.empty() ? "." : "");
}

SafetyPage::SafetyPage(const Level& level, Way way)
    : level_(level), way_(level.drill ? Way::independent : way) {
  if (!level.drill) bottles_ = bottle_hazards(level);
}

std::vector<std::pair<std::string, Rect>> SafetyPage::places() const {
  std::vector<std::pair<std::string, Rect>> places = {{"start", kStart}, {"back", kBack}};
  for (std::size_t i = 0; !level_.drill && i < kWays; ++i)
    places.emplace_back("way/" + std::string(way_name(static_cast<Way>(i))), way_rect(i));
  return places;
}

bool SafetyPage::choose(const std::string& place) {
  constexpr std::string_view kPrefix = "way/";
  if (level_.drill || !place.starts_with(kPrefix)) return false;
  way_ = way_from_name(place.substr(kPrefix.size())).value_or(way_);
  return true;
}

bool SafetyPage::key(sf::Keyboard::Key code) {
  if (code == sf::Keyboard::PageUp || code == sf::Keyboard::PageDown) {
    scroll(code == sf::Keyboard::PageUp ? -kPageStep : kPageStep);
    return true;
  }
  if (level_.drill) return false;
  const auto step = [this](int by) {
    way_ = static_cast<Way>((static_cast<int>(way_) + by + kWays) % kWays);
  };
  switch (code) {
    case sf::Keyboard::Down:
    case sf::Keyboard::Right:
    case sf::Keyboard::Tab:
      step(1);
      return true;
    case sf::Keyboard::Up:
    case sf::Keyboard::Left:
      step(-1);
      return true;
    case sf::Keyboard::Num1:
    case sf::Keyboard::Num2:
    case sf::Keyboard::Num3:
      way_ = static_cast<Way>(code - sf::Keyboard::Num1);
      return true;
    default:
      return false;
  }
}

void SafetyPage::scroll(float by) { scroll_ = std::clamp(scroll_ + by, 0.0F, hidden_); }

void SafetyPage::draw_story(Canvas& canvas) const {
  const Rect place{kLeft, kTop, kLeftWidth, level_.drill ? 500.0F : 266.0F};
  const std::vector<Passage> story = {{level_.story, Face::regular, 1.0F, 0, 0, false}};
  hidden_ = std::max(hidden_, draw_column(canvas, place, story, kStorySize, scroll_));
}

void SafetyPage::draw_safety(Canvas& canvas) const {
  std::vector<Passage> passages;
  for (const BottleHazards& bottle : bottles_) {
    passages.push_back({bottle.label, Face::bold, 1.05F, 0, 0, false});
    passages.push_back({bottle_line(bottle), Face::regular, 1.0F, 0, 7, false});
  }
  if (!bottles_.empty()) passages.push_back({words::kHazardSource, Face::regular, 0.9F, 0, 14, false});
  std::vector<std::string> rules = level_.cautions;
  for (const std::string& rule : level_.drill ? std::vector<std::string>() : house_rules())
    rules.push_back(rule);
  for (const std::string& rule : rules) passages.push_back({rule, Face::regular, 1.0F, 32, 6, true});
  const Rect place{kRight, kTop + 32, kRightWidth, 488};
  hidden_ = std::max(hidden_, draw_column(canvas, place, passages, kSafetySize, scroll_));
}

void SafetyPage::draw_ways(Canvas& canvas) const {
  canvas.text(words::kThreeWays, {kLeft, kFirstWay.y - 16}, {22, palette::print, Face::bold});
  canvas.text(words::kThreeWaysKeys, {kLeft + kLeftWidth, kFirstWay.y - 16},
              {15, palette::print, Face::regular, Align::right});
  for (std::size_t i = 0; i < kWays; ++i)
    draw_way(canvas, way_rect(i), kWayWords[i], i + 1, static_cast<std::size_t>(way_) == i);
}

void SafetyPage::draw(Canvas& canvas, const std::string& message) const {
  canvas.soft_rect({kSheet.x + 2, kSheet.y + 8, kSheet.w, kSheet.h}, 4, 14, faded(palette::shadow, 0.3));
  canvas.rect(kSheet, Paint::along({kSheet.x, kSheet.y}, {kSheet.right(), kSheet.bottom()},
                                   {{0, rgb(0xfffef8)}, {0.7F, palette::paper}, {1, palette::paper_shade}}));
  canvas.flush();
  canvas.text(level_.title, {kLeft, 66}, {32, palette::print, Face::bold});
  hidden_ = 0;
  draw_story(canvas);
  if (!level_.drill) draw_ways(canvas);
  canvas.text(words::kBefore, {kRight, kTop}, {22, palette::print, Face::bold});
  draw_safety(canvas);
  const std::string foot = message.empty() ? words::kRehearsalFirst : message;
  canvas.paragraph(foot, {kLeft, 654}, kBack.x - kLeft - 16, 21,
                   {16, message.empty() ? palette::print : palette::bad, Face::semibold});
  draw_page_button(canvas, kStart, words::kStart, true);
  draw_page_button(canvas, kBack, words::kBack, false);
}

}  // namespace halfdrop
