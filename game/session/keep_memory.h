#pragma once

namespace halfdrop {

/// Each step of the flask asks for the same memory as the one before. Tells the C library to keep what was
/// freed (up to 64 MB) instead of giving it back to the system every time; a fifth of a replay's time goes
/// there otherwise. Changes no result. Once, at the start of a program.
void keep_freed_memory();

}  // namespace halfdrop
