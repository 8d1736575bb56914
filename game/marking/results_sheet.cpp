#include "game/marking/results_sheet.h"

namespace halfdrop {

void ResultsSheet::write(Tick tick, const Writing& writing) {
  cells_[writing.cell].push_back(Entry{tick, writing.text});
}

const std::vector<Entry>& ResultsSheet::history(const std::string& cell) const {
  static const std::vector<Entry> kNothing;
  const auto found = cells_.find(cell);
  return found == cells_.end() ? kNothing : found->second;
}

std::string ResultsSheet::text(const std::string& cell) const {
  const std::vector<Entry>& entries = history(cell);
  return entries.empty() ? std::string() : entries.back().text;
}

std::optional<double> ResultsSheet::number(const std::string& cell) const {
  return number_written(text(cell));
}

Tick ResultsSheet::written_at(const std::string& cell) const {
  const std::vector<Entry>& entries = history(cell);
  return entries.empty() ? 0 : entries.back().tick;
}

int ResultsSheet::corrections(const std::string& cell) const {
  const std::vector<Entry>& entries = history(cell);
  int count = 0;
  for (std::size_t i = 1; i < entries.size(); ++i) {
    if (!entries[i - 1].text.empty() && entries[i].text != entries[i - 1].text) ++count;
  }
  return count;
}

bool ResultsSheet::begun(const std::string& run) const {
  return !text(run + "/first endpoint").empty() || !text(run + "/first titre").empty() ||
         !text(run + "/initial").empty() || !text(run + "/final").empty() || !text(run + "/titre").empty() ||
         ticked(run);
}

}  // namespace halfdrop
