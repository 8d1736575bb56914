#include <iostream>

#include "game/desk/desk.h"
#include "game/session/keep_memory.h"

int main(int argc, char** argv) {
  halfdrop::keep_freed_memory();
  return halfdrop::desk::run(argc, argv, std::cout, std::cerr);
}
