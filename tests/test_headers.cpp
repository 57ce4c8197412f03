// SPDX-License-Identifier: GPL-3.0-or-later
// Carries the precompiled headers of all tests.
