package club.emberwell.report.reading;

import club.emberwell.quantity.WrittenQuantity;

/** What was done to what, as typed; null = not given. */
public record WrittenWork(
    String process, String material, String coating, String colour, WrittenQuantity thickness) {}
