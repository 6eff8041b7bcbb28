package varanid.intake.animal;

/** How much an origin is to be treated as wild, from least to most: what wild animals carry is what quarantine is for. */
enum OriginRisk {
    CAPTIVE,
    FARMED,
    UNKNOWN,
    WILD
}
