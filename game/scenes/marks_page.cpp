#include "game/scenes/marks_page.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "game/scenes/words.h"

namespace halfdrop {

namespace {

constexpr double kOneDrop_cm3 = 0.05;
constexpr float kWheelStep = 60.0F, kPageStep = 520.0F, kPageShown = 652.0F;
constexpr std::size_t kColumns = 2;  ///< of causes in the question

std::string way(double cm3) { return cm3 > 0.0 ? "up" : "down"; }

std::string you_said(const Diagnosis& said) {
  if (!said.cause) return "You said: nothing went wrong. ";
  return std::string("You said: ") + words::cause_name(*said.cause) +
         (said.too_high ? ", titre too high. " : ", titre too low. ");
}

bool has_accurate_titre(const MarkedAttempt& marked) {
  return std::any_of(marked.titres.begin(), marked.titres.end(),
                     [](const TitreRow& row) { return row.run != "trial" && row.breakdown; });
}

}  // namespace

std::optional<LargestCause> largest_cause(const MarkedAttempt& marked) {
  std::array<double, kCauses> sums{};
  int runs = 0;
  for (const TitreRow& row : marked.titres) {
    if (row.run == "trial" || !row.breakdown) continue;
    ++runs;
    for (std::size_t i = 0; i < kCauses; ++i) sums[i] += row.breakdown->causes_cm3[i];
  }
  if (runs == 0) return std::nullopt;
  const auto most = std::max_element(sums.begin(), sums.end(),
                                     [](double a, double b) { return std::fabs(a) < std::fabs(b); });
  const LargestCause largest{static_cast<Cause>(most - sums.begin()), *most / runs};
  if (std::fabs(largest.mean_cm3) < kOneDrop_cm3) return std::nullopt;
  return largest;
}

std::string verdict(const Diagnosis& said, const std::optional<LargestCause>& was) {
  const std::string own = you_said(said);
  if (!was) {
    return own + "No cause moved your accurate titres by a drop (0.05 cm\u00b3) or more" +
           (said.cause ? ": no slip shows in them." : ": about the titres you were right.");
  }
  const std::string truth = std::string("The largest cause was: ") + words::cause_name(was->cause) +
                            ". It pushed the titre " + way(was->mean_cm3) + " by " +
                            words::fixed(std::fabs(was->mean_cm3), 2) +
                            " cm\u00b3, on average over the accurate runs. ";
  if (!said.cause) return own + truth;
  const bool same = *said.cause == was->cause, same_way = said.too_high == (was->mean_cm3 > 0.0);
  if (same && same_way) return own + truth + "You saw the cause and its way.";
  if (same) return own + truth + "You saw the cause; it pushed the other way.";
  return own + truth +
         (same_way ? "Another cause, but the way is right." : "Another cause, and the other way.");
}

std::string verdict(const Diagnosis& said, const MarkedAttempt& marked) {
  if (!has_accurate_titre(marked)) return you_said(said) + "There is no accurate titre to judge that by.";
  return verdict(said, largest_cause(marked));
}

MarksPage::MarksPage(MarkedAttempt marked, std::vector<EarlierGo> earlier, bool projector)
    : marked_(std::move(marked)), earlier_(std::move(earlier)), projector_(projector) {
  if (marked_.drill) said_ = Diagnosis{};
}

MarksPage::Wish MarksPage::take_wish() { return std::exchange(wish_, Wish::none); }

void MarksPage::draw(Canvas& canvas) const {
  places_.clear();
  said_ ? draw_page(canvas) : draw_question(canvas);
}

void MarksPage::scroll(float by) {
  scroll_ = std::clamp(scroll_ + by, 0.0F, std::max(0.0F, content_height_ - kPageShown));
}

/// A way without a cause is no answer yet.
void MarksPage::say(bool too_high) {
  if (chosen_) said_ = Diagnosis{static_cast<Cause>(*chosen_), too_high};
}

bool MarksPage::question_key(const sf::Event::KeyEvent& key) {
  const std::size_t half = (kCauses + kColumns - 1) / kColumns;
  switch (key.code) {
    case sf::Keyboard::Up:
      chosen_ = (chosen_.value_or(kCauses) + kCauses - 1) % kCauses;
      return true;
    case sf::Keyboard::Down:
    case sf::Keyboard::Tab:
      chosen_ = chosen_ ? (*chosen_ + 1) % kCauses : 0;
      return true;
    case sf::Keyboard::Left:
    case sf::Keyboard::Right:
      chosen_ =
          chosen_ && *chosen_ >= half ? *chosen_ - half : std::min(kCauses - 1, chosen_.value_or(0) + half);
      return true;
    case sf::Keyboard::Num0:
    case sf::Keyboard::Numpad0:
      said_ = Diagnosis{};
      return true;
    default:
      return false;
  }
}

bool MarksPage::page_key(const sf::Event::KeyEvent& key) {
  switch (key.code) {
    case sf::Keyboard::Up:
    case sf::Keyboard::Down:
      scroll(key.code == sf::Keyboard::Up ? -kWheelStep : kWheelStep);
      return true;
    case sf::Keyboard::PageUp:
    case sf::Keyboard::PageDown:
      scroll(key.code == sf::Keyboard::PageUp ? -kPageStep : kPageStep);
      return true;
    case sf::Keyboard::Home:
    case sf::Keyboard::End:
      scroll(key.code == sf::Keyboard::Home ? -content_height_ : content_height_);
      return true;
    case sf::Keyboard::Tab:
      if (marked_.findings.empty()) return true;
      finding_ = finding_
                     ? (*finding_ + (key.shift ? marked_.findings.size() - 1 : 1)) % marked_.findings.size()
                     : 0;
      return true;
    case sf::Keyboard::Enter:
      return finding_ && choose("finding/" + std::to_string(*finding_));
    case sf::Keyboard::A:
      return choose("again");
    case sf::Keyboard::L:
    case sf::Keyboard::Escape:
      return choose("level list");
    default:
      return false;
  }
}

void MarksPage::look_at_picture(const std::string& place) {
  for (const PictureRead& picture : std::get<ReadingDrill>(*marked_.drill).pictures) {
    if (place != "picture/" + std::to_string(picture.number)) continue;
    wish_ = Wish::replay;
    replay_tick_ = picture.tick;
  }
}

bool MarksPage::choose(const std::string& place) {
  if (place == "again") wish_ = Wish::again;
  if (place == "level list") wish_ = Wish::level_list;
  if (place == "nothing") said_ = Diagnosis{};
  if (place == "too high" || place == "too low") say(place == "too high");
  if (place.starts_with("cause/")) {
    for (std::size_t i = 0; i < kCauses; ++i) {
      if (place == "cause/" + std::string(cause_id(static_cast<Cause>(i)))) chosen_ = i;
    }
  }
  if (place.starts_with("picture/")) look_at_picture(place);
  for (std::size_t i = 0; i < marked_.findings.size(); ++i) {
    if (place != "finding/" + std::to_string(i)) continue;
    wish_ = Wish::replay;
    replay_tick_ = marked_.findings[i].tick;
  }
  return true;
}

bool MarksPage::click(sf::Vector2f at) {
  for (const auto& [name, rect] : places_) {
    if (rect.contains(at)) return choose(std::string(name));
  }
  return false;
}

bool MarksPage::event(const sf::Event& event, sf::Vector2f pointer) {
  switch (event.type) {
    case sf::Event::KeyPressed:
      return said_ ? page_key(event.key) : question_key(event.key);
    case sf::Event::TextEntered:
      // + and - lie elsewhere on every keyboard: taken as text.
      if (said_ || (event.text.unicode != '+' && event.text.unicode != '-')) return false;
      say(event.text.unicode == '+');
      return true;
    case sf::Event::MouseButtonPressed:
      return event.mouseButton.button == sf::Mouse::Left && click(pointer);
    case sf::Event::MouseWheelScrolled:
      if (said_) scroll(-event.mouseWheelScroll.delta * kWheelStep);
      return true;
    default:
      return false;
  }
}

}  // namespace halfdrop
