package varanid.intake.cagecard;

import java.net.URI;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Cards of invented animals, written by hand, for the tests of their forms. */
final class CardFixtures {

    static final CardWords WORDS = new CardWords();

    private static final Instant NOW = Instant.parse("2026-11-26T07:40:00Z");
    private static final ZoneId LISBON = ZoneId.of("Europe/Lisbon");
    private static final String DAY = "14 Nov 2026";
    private static final String RELEASE = "12 Feb 2027";

    private CardFixtures() {}

    static List<CageCard> all() {
        return List.of(calm(), emergency(), nothingKnown(), longNames(), hostile(), gone(), crowded());
    }

    /** Apart from residents; nobody has been hurt. */
    static CageCard calm() {
        return card(
                1,
                List.of(),
                "RB-014",
                "Pebble",
                "Varanus exanthematicus",
                false,
                "Shed",
                stay("running", RELEASE),
                "Routine check",
                "routine",
                List.of("defends-itself"));
    }

    /** Everything that can be said of one animal at once. */
    static CageCard emergency() {
        return card(
                2,
                List.of(
                        WORDS.alert("stat", "headline", "Vet now"),
                        new CageCard.Line(
                                "summary",
                                "New since the vet's answer: call. Breathing: with effort at rest; Gape: open all the time",
                                true),
                        WORDS.alert("held", "authority", "Harbour Wildlife Office")),
                "RB-007",
                "Crate 7",
                "Varanus salvator",
                true,
                "Boat house, the far room",
                stay("held", "12 Feb 2027"),
                "Vet now. New since the vet's answer: call",
                "stat",
                List.of("bites", "hurt"));
    }

    /** Neither name nor tag nor species, in no room, never looked at. */
    static CageCard nothingKnown() {
        return card(
                3,
                List.of(),
                "Animal 00000003",
                null,
                null,
                true,
                "in no room yet",
                stay("not-started", ""),
                "Nobody has looked it over yet: look first",
                null,
                List.of("not-told"));
    }

    /** Names as long as they may be, without a space, and every alert. */
    static CageCard longNames() {
        return card(
                4,
                List.of(
                        WORDS.alert("stat", "headline", "Vet now"),
                        new CageCard.Line("summary", "New since the vet's answer: call. " + "W".repeat(400), true),
                        WORDS.alert("held", "authority", "W".repeat(200))),
                "W".repeat(200),
                "M".repeat(200),
                "V".repeat(200),
                true,
                "W".repeat(200),
                stay("held", RELEASE),
                "W".repeat(300),
                "stat",
                List.of("hurt", "must-not-be-handled-alone"));
    }

    /** What nobody should write into a name, and some do. */
    static CageCard hostile() {
        return card(
                5,
                List.of(new CageCard.Line("held", "<img src=x onerror=alert(1)>", true)),
                "<script>alert(1)</script> & \"q\" ${it} {id}",
                "\u202Eevil\u202C \uD83E\uDD8E \u05D3\u05D5\u05E8\u05DF \u0648\u0631\u0644 \u0007",
                "Varanus 'x' OR 1=1",
                true,
                "=cmd|' /C calc'!A0",
                stay("running", RELEASE),
                "</p></div>",
                "urgent",
                List.of("not-told"));
    }

    static CageCard gone() {
        return card(
                6,
                List.of(WORDS.alert("gone")),
                "RB-001",
                null,
                "Varanus varius",
                false,
                "has left",
                stay("gone", ""),
                "Routine check",
                "routine",
                List.of("not-told"));
    }

    /** As much as is still set in letters of the usual size. */
    static CageCard crowded() {
        return card(
                7,
                List.of(WORDS.alert("held-plain")),
                "RB-2026-0412-B",
                "The long one",
                "Varanus salvadorii",
                true,
                "Boat house",
                stay("running-vet", RELEASE),
                "Vet within 7 days",
                "urgent",
                List.of("hurt", "must-not-be-handled-alone"));
    }

    private static CageCard.Stay stay(String state, String notBefore) {
        CardWords.StayTexts texts = WORDS.stay(state, "start", DAY, "day", notBefore);
        boolean days = !notBefore.isEmpty();
        return new CageCard.Stay(
                state,
                days ? LocalDate.of(2026, 11, 14) : null,
                days ? LocalDate.of(2027, 2, 12) : null,
                texts.start(),
                texts.release());
    }

    private static CageCard card(
            int id,
            List<CageCard.Line> alerts,
            String title,
            @Nullable String name,
            @Nullable String species,
            boolean strict,
            String room,
            CageCard.Stay stay,
            String headline,
            @Nullable String urgency,
            List<String> told) {
        UUID animal = new UUID(0x0199_0000_0000_7000L, 0x8000_0000_0000_0000L + id);
        List<CageCard.Line> handling = new ArrayList<>();
        told.forEach(code -> handling.add(WORDS.told(code, "count", "2")));
        handling.addAll(WORDS.handling());
        return new CageCard(
                animal,
                URI.create("https://intake.reed-bank.example.org/animals/" + animal),
                NOW,
                LISBON,
                alerts,
                title,
                name,
                title,
                species,
                species == null ? null : WORDS.commonName(species).orElse(null),
                WORDS.apart(strict),
                room,
                stay,
                new CageCard.HowSoon(
                        urgency, headline, "Worked out by weights that people set and nobody has validated"),
                handling,
                WORDS.beforeOpening(strict),
                null);
    }
}
