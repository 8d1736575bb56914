#include <iostream>

#include "game/desk/desk.h"

int main(int argc, char** argv) { return halfdrop::desk::run(argc, argv, std::cout, std::cerr); }
