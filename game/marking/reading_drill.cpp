#include "game/marking/reading_drill.h"

#include <algorithm>
#include <cmath>

#include "game/level/say.h"
#include "game/marking/criteria.h"
#include "game/marking/written_number.h"
#include "game/session/view.h"
#include "physics/burette/column.h"

namespace halfdrop {

namespace {

constexpr double kHundredths = 100.0;

int last_digit(double cm3, double to_cm3) {
  const double steps = std::round(cm3 / to_cm3);
  return static_cast<int>(std::llround(steps * to_cm3 * kHundredths) % 10);
}

/// Digits of hundredths as they were written; nothing for a figure without a second decimal.
std::optional<int> digit_written(const std::string& text, double written_cm3) {
  if (decimals_written(text) < 2 || written_cm3 < 0.0) return std::nullopt;
  return static_cast<int>(std::llround(written_cm3 * kHundredths) % 10);
}

/// The most striking liking, by a sign test for each digit on the readings where written and called for
/// differ; shared among as many tests as there are digits to choose from (Bonferroni).
void find_liking(ReadingDrill& drill, const std::array<int, 10>& gained, const std::array<int, 10>& lost) {
  const int choices = drill.to_cm3 > 0.01 ? 2 : 10;
  const int tests = choices == 2 ? 1 : choices;  // of two digits one's gain is the other's loss
  std::optional<int> most;
  for (int digit = 0; digit < 10; ++digit) {
    const auto i = static_cast<std::size_t>(digit);
    if (gained[i] <= lost[i]) continue;
    const double chance = std::min(1.0, tests * sign_test(gained[i], lost[i]));
    if (most && chance >= drill.liked_chance) continue;
    most = digit;
    drill.liked_chance = chance;
  }
  if (most && drill.liked_chance <= kUnlikely) drill.liked_digit = most;
}

void count_digits(ReadingDrill& drill) {
  std::array<int, 10> gained{}, lost{};
  for (const PictureRead& picture : drill.pictures) {
    if (!picture.read() || picture.slip()) continue;
    const std::optional<int> written = digit_written(picture.text, *picture.written_cm3);
    if (!written) continue;
    const auto has = static_cast<std::size_t>(*written);
    const auto wants = static_cast<std::size_t>(last_digit(picture.true_cm3, drill.to_cm3));
    ++drill.digits[has].written;
    ++drill.digits[wants].called_for;
    if (has == wants) continue;
    ++gained[has];
    ++lost[wants];
  }
  find_liking(drill, gained, lost);
}

}  // namespace

bool PictureRead::slip() const { return read() && std::fabs(error_cm3()) > kSlip_cm3; }

bool PictureRead::off_level() const { return read() && std::fabs(parallax_cm3()) > kLevelEye_cm3; }

double trained_sd_cm3(double to_cm3) {
  if (to_cm3 <= 0.01) return kTrainedSd_cm3;
  return std::sqrt(kTrainedSd_cm3 * kTrainedSd_cm3 + to_cm3 * to_cm3 / 12.0);
}

ReadingDrill reading_figures(std::vector<PictureRead> pictures, double to_cm3) {
  ReadingDrill drill;
  drill.to_cm3 = to_cm3;
  drill.pictures = std::move(pictures);
  std::vector<double> errors;
  double sizes = 0.0, parallax = 0.0;
  for (const PictureRead& picture : drill.pictures) {
    if (!picture.read()) continue;
    ++drill.read;
    sizes += std::fabs(picture.error_cm3());
    if (picture.slip())
      ++drill.slips;
    else
      errors.push_back(picture.error_cm3());
    if (!picture.off_level()) continue;
    ++drill.off_level;
    parallax += std::fabs(picture.parallax_cm3());
  }
  drill.errors = statistics_of(errors);
  if (drill.read > 0) drill.mean_size_cm3 = sizes / drill.read;
  if (drill.off_level > 0) drill.off_level_cost_cm3 = parallax / drill.off_level;
  count_digits(drill);
  return drill;
}

std::string slip_looks_like(const PictureRead& picture) {
  constexpr double kLikely_cm3 = 0.07;
  const auto near = [&](double cm3) { return std::fabs(*picture.written_cm3 - cm3) <= kLikely_cm3; };
  const double seen = picture.apparent_cm3;
  if (near(picture.apparent_edge_cm3)) return say("drill.reading.slip.edge");
  if (near(2.0 * std::ceil(seen) - seen)) return say("drill.reading.slip.upwards");
  if (near(seen + 1.0) || near(seen - 1.0)) return say("drill.reading.slip.one");
  if (near(seen + 10.0) || near(seen - 10.0)) return say("drill.reading.slip.ten");
  return {};
}

void ReadingWatch::look(const Session& session, bool again) {
  const BenchState& bench = session.state();
  pictures_.resize(session.spec().drill.pictures.size());
  PictureRead& picture = pictures_[static_cast<std::size_t>(bench.drill_step)];
  if (picture.shown && !again) return;
  const ReadingSeen seen = reading_seen(session.spec(), bench);
  picture.shown = true;
  picture.true_cm3 =
      scale_reading_cm3(session.spec().burette, bench.ledger.balance(Account::column).volume_cm3());
  picture.apparent_cm3 = seen.bottom_cm3;
  picture.apparent_edge_cm3 = seen.edge_cm3;
  picture.tick = bench.tick;
}

void ReadingWatch::before_change(const Session& session, const Change& change) {
  const Deed* const deed = std::get_if<Deed>(&change.what);
  if (deed != nullptr && *deed == Deed::next_picture) look(session, false);
}

void ReadingWatch::after_change(const Session& session, const Change& change) {
  const Writing* const writing = std::get_if<Writing>(&change.what);
  const auto shown = static_cast<int>(session.state().drill_step) + 1;
  if (writing != nullptr && writing->cell == reading_cell(shown)) look(session, true);
}

ReadingDrill ReadingWatch::figures(const Session& session) {
  look(session, false);
  for (std::size_t i = 0; i < pictures_.size(); ++i) {
    PictureRead& picture = pictures_[i];
    picture.number = static_cast<int>(i) + 1;
    picture.text = session.cell(reading_cell(picture.number));
    picture.written_cm3 = number_written(picture.text);
  }
  return reading_figures(std::move(pictures_), session.level().drill->to_cm3);
}

}  // namespace halfdrop
