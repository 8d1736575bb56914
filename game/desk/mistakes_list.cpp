#include <algorithm>
#include <iomanip>
#include <ostream>

#include "game/demonstrator/mistakes.h"
#include "game/desk/commands.h"
#include "game/records/mistakes_json.h"

namespace halfdrop::desk {

namespace {

MistakeRow row_of(const Mistake& mistake) {
  MistakeRow row{mistake.name, mistake.title, mistake.family,
                 std::nullopt, mistake.titre, mistake.typical_cm3};
  if (mistake.cause) row.cause = cause_id(*mistake.cause);
  return row;
}

void print_text(const MistakeRow& row, std::ostream& out) {
  out << std::left << std::setw(28) << row.name << row.title << '\n' << std::setw(28) << "";
  out << row.family << "; titre: " << row.titre;
  if (row.typical_cm3 > 0.0) out << ", about " << row.typical_cm3 << " cm\u00b3";
  if (row.cause) out << ", through " << *row.cause;
  out << '\n';
}

}  // namespace

int print_mistakes(bool json, Streams streams) {
  for (const Mistake& mistake : mistakes()) {
    if (json) {
      streams.out << mistake_json(row_of(mistake)) << '\n';
    } else {
      print_text(row_of(mistake), streams.out);
    }
  }
  return kDone;
}

}  // namespace halfdrop::desk
