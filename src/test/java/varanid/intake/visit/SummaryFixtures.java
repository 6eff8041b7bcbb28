package varanid.intake.visit;

import static varanid.intake.visit.Basis.COMPUTED;
import static varanid.intake.visit.Basis.MEASURED;
import static varanid.intake.visit.Basis.OBSERVED;
import static varanid.intake.visit.Basis.RECORDED;
import static varanid.intake.visit.Basis.REPORTED;
import static varanid.intake.visit.Basis.VET;

import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.visit.Statement.Weight;

/** Summaries of invented animals, written by hand, for the tests of forms. */
final class SummaryFixtures {

    private static final ZoneId LISBON = ZoneId.of("Europe/Lisbon");
    private static final Instant NOW = Instant.parse("2026-03-14T07:40:00Z");
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 14);
    private static final Instant LOOK = Instant.parse("2026-03-14T06:55:00Z");
    private static final String KEEPER = "Keeper of the night shift";
    private static final List<String> NOTICES = List.of(
            "The weights of this checklist were set by experts and have not been validated.",
            "This is not a diagnosis. A licensed vet decides.",
            "Local law applies.");

    private SummaryFixtures() {}

    static List<Summary> all() {
        return List.of(emergency(), stableSick(), healthyImportWithGaps(), empty(), hostile());
    }

    /** Laboured breathing, lean, four days after it came in a van. */
    static Summary emergency() {
        return new Summary(
                NOW,
                TODAY,
                LISBON,
                new Summary.Subject(id(1), "Crate 7", "RB-007", "Varanus salvator", "juvenile", "sex not known", null),
                List.of(),
                new Summary.Standing(
                        "stat",
                        "A vet now",
                        COMPUTED,
                        "strict",
                        "Own room or air, last in the work order: may spread by air"),
                List.of(
                        section(
                                Part.WHO_AND_WHY,
                                Statement.of("why", COMPUTED, "Why now", "Breathes with effort, seen at rest")
                                        .weighing(Weight.STRONG),
                                Statement.of("looked", RECORDED, "Looked at", "45 minutes ago")
                                        .at(LOOK)
                                        .by(KEEPER),
                                Statement.of("arrived", RECORDED, "Arrived", "4 days ago")
                                        .on(TODAY.minusDays(4))),
                        section(
                                Part.FINDINGS,
                                Statement.of(
                                                "sign",
                                                OBSERVED,
                                                "Laboured breathing",
                                                "marked: the whole body moves with each breath")
                                        .at(LOOK)
                                        .by(KEEPER)
                                        .weighing(Weight.STRONG)
                                        .coded("finding", "laboured-breathing", "marked"),
                                Statement.of("sign", OBSERVED, "Nasal discharge", "liquid")
                                        .at(LOOK)
                                        .by(KEEPER)
                                        .coded("finding", "nasal-discharge", "liquid"),
                                Statement.of("sign", OBSERVED, "Body condition", "lean")
                                        .at(LOOK)
                                        .by(KEEPER)
                                        .coded("finding", "body-condition", "lean"),
                                Statement.of("not-seen", OBSERVED, "Could not be seen", "Inside of the mouth")
                                        .at(LOOK)
                                        .by(KEEPER)
                                        .qualified("must be seen")
                                        .weighing(Weight.STRONG),
                                Statement.of("absent", OBSERVED, "Looked for and absent", "ticks, mites, wounds, burns")
                                        .at(LOOK)
                                        .by(KEEPER)
                                        .weighing(Weight.SMALL)),
                        section(
                                Part.WEIGHT,
                                Statement.of("weight", MEASURED, "Weight", "212 g")
                                        .at(LOOK)
                                        .by(KEEPER)
                                        .qualified("scale reads in steps of 1 g")
                                        .measured(new BigDecimal("212"), "g"),
                                Statement.of("weight-change", COMPUTED, "Change", "−9 % over 4 days (−9.4 to −8.6 %)")
                                        .on(TODAY)),
                        section(
                                Part.TREATMENTS,
                                Statement.of("treatment", REPORTED, "Given before", "“a worming paste”, unknown amount")
                                        .on(TODAY.minusDays(5))
                                        .by("the driver, by word of mouth")),
                        section(
                                Part.DONE_AND_NOT_DONE,
                                Statement.of("isolation", RECORDED, "Isolation", "strict, room “Boiler room”")
                                        .on(TODAY.minusDays(4))),
                        section(
                                Part.RECOMMENDATION,
                                Statement.of(
                                                "recommendation",
                                                COMPUTED,
                                                "Worked out",
                                                "A vet now (lowest: stat, highest: stat)")
                                        .weighing(Weight.STRONG)
                                        .coded("request-priority", "stat", null),
                                Statement.of("reason", COMPUTED, "Reason 1", "Laboured breathing: marked, 12 points")
                                        .qualified("this alone asks for a vet now")),
                        section(
                                Part.QUESTIONS,
                                Statement.of(
                                                "question",
                                                REPORTED,
                                                "Question",
                                                "Can the other eleven of the van stay in the same room?")
                                        .by(KEEPER)),
                        section(
                                Part.HISTORY,
                                Statement.of("earlier-look", OBSERVED, "Look", "vet within 7 days")
                                        .on(TODAY.minusDays(3))
                                        .by(KEEPER))),
                List.of(weight(4, "233", true), weight(2, "221", true), weight(0, "212", true)),
                null,
                NOTICES);
    }

    /** Mites and a weight that falls slowly; a vet has spoken. */
    static Summary stableSick() {
        return new Summary(
                NOW,
                TODAY,
                LISBON,
                new Summary.Subject(
                        id(2), "Marsh", "RB-003", "Varanus exanthematicus", "adult", "female", "276098106123456"),
                List.of(new Summary.Alert(
                        "new-since-the-vets-answer", "New since the vet's answer: call. Blood in the stool")),
                new Summary.Standing(
                        "asap",
                        "Vet within 24 hours",
                        VET,
                        "strict",
                        "Own room or air, last in the work order: may spread by contact"),
                List.of(
                        section(
                                Part.WHO_AND_WHY,
                                Statement.of("why", COMPUTED, "Why now", "Blood in the stool")
                                        .weighing(Weight.STRONG),
                                Statement.of("arrived", RECORDED, "Arrived", "30 days ago")
                                        .on(TODAY.minusDays(30))),
                        section(
                                Part.VETS_ANSWERS,
                                Statement.of(
                                                "instructions",
                                                VET,
                                                "To the keeper",
                                                "“Keep the cage dry.\nWeigh on Mondays, same scale.”")
                                        .at(NOW.minusSeconds(86_400 * 3))
                                        .by("Vet of the Millpond Clinic")
                                        .qualified("confirmed")),
                        section(
                                Part.FINDINGS,
                                Statement.of("sign", OBSERVED, "Mites", "a few")
                                        .at(LOOK)
                                        .by(KEEPER)
                                        .qualified("seen in poor light")
                                        .coded("finding", "mites", "few")),
                        section(
                                Part.WEIGHT,
                                Statement.of("weight", MEASURED, "Weight", "1,180 g")
                                        .at(LOOK)
                                        .by(KEEPER)
                                        .measured(new BigDecimal("1180"), "g")),
                        section(
                                Part.SURROUNDINGS,
                                Statement.of("reading", MEASURED, "Basking surface", "46 °C")
                                        .on(TODAY.minusDays(1))
                                        .by(KEEPER)
                                        .qualified("published 45–60 °C; common practice 50–65 °C")
                                        .measured(new BigDecimal("46"), "Cel"),
                                Statement.of("reading", MEASURED, "Humidity", "38 % at 29 °C")
                                        .on(TODAY.minusDays(1))
                                        .by(KEEPER)
                                        .measured(new BigDecimal("38"), "%")),
                        section(
                                Part.SAMPLES,
                                Statement.of("sample", MEASURED, "Stool", "negative (flotation)")
                                        .on(TODAY.minusDays(10))
                                        .by("Laboratory of the Millpond Clinic")),
                        section(
                                Part.HANDLING,
                                Statement.of(
                                                "bite",
                                                REPORTED,
                                                "Bitten",
                                                "a helper, left hand, skin broken, saw a doctor")
                                        .on(TODAY.minusDays(20))
                                        .weighing(Weight.STRONG)),
                        section(
                                Part.CONSENT_AND_CONTACT,
                                Statement.of("contact", REPORTED, "Call", "Reed Bank, 555 0100, until 22:00"))),
                weights(30),
                null,
                NOTICES);
    }

    /** Nothing wrong was seen, and much was not looked at. */
    static Summary healthyImportWithGaps() {
        return new Summary(
                NOW,
                TODAY,
                LISBON,
                new Summary.Subject(
                        id(3), "Animal without a name", "RB-016", null, "life stage not known", "sex not known", null),
                List.of(),
                new Summary.Standing(
                        "urgent",
                        "Look again by 10:00; vet within 7 days if still unseen",
                        COMPUTED,
                        "strict",
                        "Apart as a group: where it comes from is not known"),
                List.of(
                        section(
                                Part.WHO_AND_WHY,
                                Statement.of("why", COMPUTED, "Why now", "Six signs that must be seen were not")
                                        .weighing(Weight.STRONG)),
                        section(
                                Part.FINDINGS,
                                Statement.of(
                                                "not-seen",
                                                OBSERVED,
                                                "Could not be seen",
                                                "Breathing at rest; inside of the mouth; vent")
                                        .at(LOOK)
                                        .by(KEEPER)
                                        .qualified("at night, by torch"),
                                Statement.of("absent", OBSERVED, "Looked for and absent", "mites, ticks")
                                        .at(LOOK)
                                        .by(KEEPER)),
                        section(
                                Part.WEIGHT,
                                Statement.of("no-weight", RECORDED, "Weight", "nobody has weighed it yet")),
                        section(
                                Part.INTAKE_AND_OUTPUT,
                                Statement.of("last-meal", RECORDED, "Last meal", "not recorded")),
                        section(
                                Part.ORIGIN,
                                Statement.of("declared", REPORTED, "Declared", "captive bred (C)")
                                        .by("papers of the consignment")
                                        .coded("cites-source", "C", null),
                                Statement.of("assessed", COMPUTED, "Assessed", "cannot be told; treated as unknown"))),
                List.of(),
                null,
                NOTICES);
    }

    /** Only registered. */
    static Summary empty() {
        return new Summary(
                NOW,
                TODAY,
                LISBON,
                new Summary.Subject(
                        id(4), "Animal without a name", null, null, "life stage not known", "sex not known", null),
                List.of(),
                new Summary.Standing(
                        null, "Nobody has looked yet: look first", COMPUTED, "strict", "Apart until it was looked at"),
                List.of(section(
                        Part.FINDINGS,
                        Statement.of("no-look", RECORDED, "Look", "nobody has looked at it yet")
                                .weighing(Weight.STRONG))),
                List.of(),
                null,
                NOTICES);
    }

    /** Every text is an attack, or a nuisance. */
    static Summary hostile() {
        String markup = "<script>alert('x')</script> <b onclick=\"y\">&amp; ]]> <!-- -- >";
        String rightToLeft = "\u202Eevil\u202C שלום مرحبا 日本語 🦎\uD83E\uDD8E é e\u0301";
        String formula = "=cmd|' /C calc'!A0";
        String lines = "one\ntwo\n\n  three\t“four” 'five' \\six";
        String endless = "long".repeat(1000);
        List<Summary.Section> sections = new ArrayList<>();
        for (Part part : Part.values()) {
            sections.add(section(
                    part,
                    Statement.of("sign", OBSERVED, markup, rightToLeft)
                            .at(LOOK)
                            .by(formula)
                            .qualified(lines)
                            .coded("finding", "mites", "few"),
                    Statement.of("words", VET, rightToLeft, lines).on(TODAY).by(markup),
                    Statement.of("words", REPORTED, formula, markup).by(rightToLeft),
                    Statement.of("words", RECORDED, lines, formula)));
        }
        sections.add(new Summary.Section(
                "history",
                markup,
                true,
                List.of(Statement.of("words", REPORTED, "endless", endless).qualified(endless))));
        return new Summary(
                NOW,
                TODAY,
                LISBON,
                new Summary.Subject(id(5), markup, formula, rightToLeft, markup, lines, null),
                List.of(
                        new Summary.Alert("new-since-the-vets-answer", markup),
                        new Summary.Alert("new-since-the-vets-answer", rightToLeft)),
                new Summary.Standing("stat", markup, VET, "strict", rightToLeft),
                sections,
                List.of(weight(1, "0.1", true), weight(0, "99999", false)),
                null,
                List.of(markup, rightToLeft));
    }

    private static Summary.Section section(Part part, Statement... statements) {
        return new Summary.Section(part.code(), title(part), part.isForLater(), List.of(statements));
    }

    private static String title(Part part) {
        String words = part.code().replace('-', ' ');
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    private static List<Summary.WeightPoint> weights(int days) {
        List<Summary.WeightPoint> points = new ArrayList<>();
        for (int before = days; before >= 0; before -= 3) {
            points.add(weight(before, String.valueOf(1180 + before * 2), before % 9 != 0));
        }
        return points;
    }

    private static Summary.WeightPoint weight(int daysBefore, String grams, boolean comparable) {
        @Nullable BigDecimal step = comparable ? BigDecimal.ONE : null;
        return new Summary.WeightPoint(
                LOOK.minusSeconds(86_400L * daysBefore),
                TODAY.minusDays(daysBefore),
                new BigDecimal(grams),
                step,
                comparable);
    }

    private static UUID id(int last) {
        return UUID.fromString("01995f3e-8d2a-7c31-9a55-00000000000" + last);
    }
}
