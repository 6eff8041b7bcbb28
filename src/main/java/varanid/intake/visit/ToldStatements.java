package varanid.intake.visit;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import varanid.intake.platform.time.ReaderDates;
import varanid.intake.report.ReportWords;
import varanid.intake.report.Standing;
import varanid.intake.report.Standing.Said;
import varanid.intake.report.Told;

/** Puts what was told on the page: the words as they were told, with who says so and when. */
@Component
class ToldStatements {

    private static final String SYSTEM = "reports";

    private final ReportWords words;
    private final HandOverTexts texts;
    private final Names names;

    ToldStatements(ReportWords words, HandOverTexts texts, Names names) {
        this.words = words;
        this.texts = texts;
        this.names = names;
    }

    List<Statement> ofFindings(Visit visit, Standing told) {
        return coded(
                        visit,
                        "reproductive-state",
                        "reproductiveState",
                        told.reproductiveState(),
                        code -> words.reproductiveState(code))
                .stream()
                .map(each -> of(told.reproductiveState(), "gravid-suspected", "laid-recently")
                        ? each
                        : each.weighing(Statement.Weight.SMALL))
                .toList();
    }

    List<Statement> ofIntakeAndOutput(Visit visit, Standing told) {
        List<Statement> said = new ArrayList<>();
        last(visit, said, "last-meal", "lastMeal", told.lastMeal());
        last(visit, said, "last-stool", "lastStool", told.lastStool());
        last(visit, said, "last-urate", "lastUrate", told.lastUrate());
        last(visit, said, "last-drink", "lastDrink", told.lastDrink());
        verbatim(visit, said, "diet", "diet", told.diet());
        verbatim(visit, said, "supplements", "supplements", told.supplements());
        return said;
    }

    List<Statement> ofTreatments(Visit visit, Standing told) {
        return told.treatments().stream().map(said -> treatment(visit, said)).toList();
    }

    List<Statement> ofSurroundings(Visit visit, Standing told) {
        List<Statement> said = new ArrayList<>();
        Said<List<Told.Lamp>> lamps = told.lamps();
        if (lamps != null) {
            lamps.value().forEach(lamp -> said.add(lamp(visit, lamps, lamp)));
        }
        told.temperatures().forEach((place, warmth) -> said.add(temperature(visit, place, warmth)));
        return said;
    }

    List<Statement> ofOrigin(Visit visit, Standing told) {
        Said<Told.Journey> journey = told.transport();
        if (journey == null) {
            return List.of();
        }
        Told.Journey value = journey.value();
        return List.of(said(
                visit,
                "journey",
                words.label("transport"),
                joined(
                        value.hours() == null
                                ? null
                                : words.counted("hours", value.hours().toPlainString()),
                        value.words()),
                journey));
    }

    List<Statement> ofHandling(Visit visit, Standing told) {
        List<Statement> said = new ArrayList<>(
                coded(visit, "handling-risk", "handlingRisk", told.handlingRisk(), words::handlingRisk).stream()
                        .map(each ->
                                of(told.handlingRisk(), "calm-so-far") ? each : each.weighing(Statement.Weight.STRONG))
                        .toList());
        told.bites().forEach(bite -> said.add(bite(visit, bite)));
        Said<List<String>> vulnerable = told.vulnerablePeople();
        boolean known = vulnerable != null && Stream.of("none", "unknown").noneMatch(vulnerable.value()::contains);
        if (vulnerable != null) {
            said.add(said(
                            visit,
                            "vulnerable-people",
                            words.label("vulnerablePeople"),
                            vulnerable.value().stream()
                                    .map(words::vulnerablePeople)
                                    .collect(Collectors.joining("; ")),
                            vulnerable)
                    .weighing(known ? Statement.Weight.STRONG : Statement.Weight.PLAIN));
        }
        words.cautions(told).stream()
                .filter(each -> each.id().equals("bitten") || known && each.id().equals("vulnerable"))
                .forEach(each -> said.add(Statement.of("caution", Basis.RECORDED, texts.label("caution"), each.text())
                        .coded("caution", each.id(), null)
                        .weighing(Statement.Weight.SMALL)));
        return said;
    }

    List<Statement> ofQuestions(Visit visit, Standing told) {
        Said<List<String>> questions = told.questions();
        return questions == null
                ? List.of()
                : questions.value().stream()
                        .map(each -> said(visit, "question", words.label("questions"), each, questions))
                        .toList();
    }

    List<Statement> ofConsentAndContact(Visit visit, Standing told) {
        List<Statement> said = new ArrayList<>();
        Said<Told.Consent> consent = told.consent();
        if (consent == null) {
            said.add(untold("consent", "consent"));
        } else {
            Told.Consent value = consent.value();
            said.add(said(
                    visit,
                    "consent",
                    words.label("consent"),
                    joined(
                            value.given().isEmpty()
                                    ? null
                                    : value.given().stream().map(words::consent).collect(Collectors.joining("; ")),
                            value.by() == null ? null : words.shown("by", value.by()),
                            value.words()),
                    consent));
        }
        verbatim(visit, said, "spending-limit", "spendingLimit", told.spendingLimit());
        if (told.payer() == null) {
            said.add(untold("payer", "payer"));
        }
        verbatim(visit, said, "payer", "payer", told.payer());
        Said<Told.Contact> contact = told.contact();
        if (contact == null) {
            said.add(untold("contact", "contact"));
        } else {
            Told.Contact value = contact.value();
            said.add(said(
                    visit,
                    "contact",
                    words.label("contact"),
                    joined(
                            value.name(),
                            value.phone(),
                            value.email(),
                            value.bestTime() == null ? null : words.shown("bestTime", value.bestTime())),
                    contact));
        }
        return said;
    }

    private void last(Visit visit, List<Statement> all, String code, String field, @Nullable Said<Told.Last> said) {
        if (said == null) {
            return;
        }
        Told.Last value = said.value();
        String when = value.daysAgo() != null
                ? words.counted("daysAgo", value.daysAgo().toString())
                : value.on() != null ? null : words.shown(value.unknown() != null ? "unknownWhen" : "noDay");
        String text = joined(value.food(), when, value.words());
        all.add(about(
                visit,
                code,
                words.label(field),
                text.isEmpty() ? ReaderDates.PAPER.shortDay(Objects.requireNonNull(value.on())) : text,
                said,
                value.on()));
    }

    private Statement treatment(Visit visit, Said<Told.Treatment> said) {
        Told.Treatment value = said.value();
        return about(
                visit,
                "treatment",
                words.label("treatments"),
                value.what(),
                said,
                value.on(),
                value.amount() == null ? null : words.shown("amount", value.amount()),
                value.period() == null ? null : words.shown("given", value.period()),
                value.givenBy() == null ? null : words.shown("givenBy", value.givenBy()),
                value.why() == null ? null : words.shown("why", value.why()));
    }

    private Statement lamp(Visit visit, Said<?> said, Told.Lamp lamp) {
        Statement statement = said(
                visit,
                "reported-lamp",
                words.label("lamps"),
                joined(
                        lamp.type() == null ? null : words.lamp(lamp.type()),
                        lamp.place(),
                        lamp.ageMonths() == null
                                ? null
                                : words.counted("ageMonths", lamp.ageMonths().toString()),
                        lamp.words()),
                said);
        return lamp.type() == null ? statement : statement.coded(SYSTEM, "lamp", lamp.type());
    }

    private Statement temperature(Visit visit, String place, Said<Told.Warmth> said) {
        Told.Warmth value = said.value();
        String celsius = value.celsius().stripTrailingZeros().toPlainString() + " °C";
        return about(
                        visit,
                        "reported-temperature",
                        words.temperature(place),
                        value.unit().equals("Cel") ? celsius : value.value().toPlainString() + " °F (" + celsius + ")",
                        said,
                        null,
                        value.confirmed() ? words.shown("confirmed") : null)
                .coded(SYSTEM, "temperature", place)
                .measured(value.celsius(), "Cel");
    }

    private Statement bite(Visit visit, Said<Told.Bite> said) {
        Told.Bite value = said.value();
        return about(
                        visit,
                        "bite",
                        words.label("bites"),
                        joined(Objects.requireNonNullElse(value.who(), words.shown("someone")), value.bodyPart()),
                        said,
                        value.on(),
                        words.shown("brokeSkin", words.yesNoUnknown(value.brokeSkin())),
                        words.shown("doctorSeen", words.yesNoUnknown(value.doctorSeen())))
                .weighing(Statement.Weight.STRONG);
    }

    private interface Label {
        String of(String code);
    }

    private List<Statement> coded(
            Visit visit, String code, String field, @Nullable Said<Told.Coded> said, Label label) {
        return said == null
                ? List.of()
                : List.of(said(
                                visit,
                                code,
                                words.label(field),
                                joined(
                                        label.of(said.value().code()),
                                        said.value().words()),
                                said)
                        .coded(SYSTEM, code, said.value().code()));
    }

    private static boolean of(@Nullable Said<Told.Coded> said, String... codes) {
        return said != null && Arrays.asList(codes).contains(said.value().code());
    }

    private void verbatim(Visit visit, List<Statement> all, String code, String field, @Nullable Said<String> said) {
        if (said != null) {
            all.add(said(visit, code, words.label(field), said.value(), said));
        }
    }

    private Statement untold(String code, String field) {
        return Statement.of(code, Basis.RECORDED, words.label(field), texts.say("not-recorded"))
                .weighing(Statement.Weight.SMALL);
    }

    /** Of nothing that happened on a day of its own: the day it was told on. */
    private Statement said(Visit visit, String code, String label, String text, Said<?> said) {
        return about(visit, code, label, text, said, null);
    }

    private Statement about(
            Visit visit,
            String code,
            String label,
            String text,
            Said<?> said,
            @Nullable LocalDate day,
            @Nullable String... more) {
        @Nullable String writer = names.of(visit, said.recordedBy());
        @Nullable String teller = said.reportedBy();
        List<@Nullable String> about = new ArrayList<>(Arrays.asList(more));
        if (day != null) {
            about.add(words.shown("toldOn", ReaderDates.PAPER.shortDay(said.on())));
        }
        if (teller != null && writer != null && !teller.equalsIgnoreCase(writer)) {
            about.add(words.shown("writtenDownBy", writer));
        }
        String qualifier = joined(about.toArray(new String[0]));
        return Statement.of(code, Basis.REPORTED, label, text)
                .on(day == null ? said.on() : day)
                .by(teller == null ? writer : teller)
                .qualified(qualifier.isEmpty() ? null : qualifier);
    }

    private static String joined(@Nullable String... parts) {
        return Arrays.stream(parts).filter(Objects::nonNull).collect(Collectors.joining("; "));
    }
}
