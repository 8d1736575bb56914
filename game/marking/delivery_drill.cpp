#include "game/marking/delivery_drill.h"

#include "game/level/say.h"
#include "game/marking/wording.h"

namespace halfdrop {

double asked_cm3(const BenchSpec& spec, const Delivery& delivery) {
  switch (delivery.what) {
    case Delivery::What::one_drop:
      return spec.settled.full_drop_cm3;
    case Delivery::What::half_drop:
      return kHalfDrop_cm3;
    case Delivery::What::volume:
      break;
  }
  return delivery.volume_cm3;
}

std::string asked_text(const Delivery& delivery) {
  if (delivery.what == Delivery::What::one_drop) return say("drill.one_drop");
  if (delivery.what == Delivery::What::half_drop) return say("drill.half_drop");
  return cm3_text(delivery.volume_cm3);
}

std::optional<double> VolumeDelivered::error_cm3() const {
  if (!delivered_cm3) return std::nullopt;
  return *delivered_cm3 - asked_cm3;
}

void DeliveryWatch::after_change(const Session& session, const Change& change) {
  const Deed* const deed = std::get_if<Deed>(&change.what);
  if (deed == nullptr || *deed != Deed::close_volume) return;
  const Ledger& books = session.state().ledger;
  const Quanta now = books.entered(Account::beaker).volume;
  closed_.push_back({static_cast<double>(now - in_beaker_) * kVolumeQuantum_cm3,
                     books.balance(Account::pendant_drop).volume_cm3(), session.state().tick});
  in_beaker_ = now;
}

DeliveryDrill DeliveryWatch::figures(const Session& session) const {
  DeliveryDrill drill;
  for (const Delivery& delivery : session.level().drill->deliveries) {
    VolumeDelivered volume{delivery, asked_cm3(session.spec(), delivery), {}, 0.0, session.state().tick};
    const std::size_t index = drill.volumes.size();
    if (index < closed_.size()) {
      volume.delivered_cm3 = closed_[index].delivered_cm3;
      volume.hanging_cm3 = closed_[index].hanging_cm3;
      volume.tick = closed_[index].tick;
    }
    drill.volumes.push_back(volume);
  }
  return drill;
}

}  // namespace halfdrop
