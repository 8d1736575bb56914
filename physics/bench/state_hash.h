#pragma once

#include <string>

#include "physics/bench/bench_state.h"

namespace halfdrop {

/// 16 hexadecimal digits (FNV-1a, 64 bits) over every field of the state, the same on every compiler.
[[nodiscard]] std::string state_hash(const BenchState& state);

}  // namespace halfdrop
