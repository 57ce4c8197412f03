// SPDX-License-Identifier: GPL-3.0-or-later
// The invented animals of Lantern Quay Fish House and how they grow and fare in 2031.
#pragma once

#include "scene.h"

namespace render {

struct DemoSession {
    std::string on;   // ISO date, the first Monday of a month
    int ageDays = 0;  // of the pipefish, hatched on 2030-11-15
    bool seahorses = false;
};

const std::vector<DemoSession>& demoSessions();

// The animals without their measures of a day: code, species, sex, card.
std::vector<Animal> demoAnimals();

// The animal as it is on the day of a session (index into demoSessions()).
Animal animalAt(const Animal& animal, std::size_t session);

// How a seahorse holds its tail in that session.
Tail tailAt(const Animal& animal, std::size_t session);

}  // namespace render
