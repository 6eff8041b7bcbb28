package varanid.intake.report;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import varanid.intake.measures.Temperature;
import varanid.intake.measures.TemperatureUnit;
import varanid.intake.platform.time.Present;
import varanid.intake.platform.web.Contacts;
import varanid.intake.platform.web.Given;
import varanid.intake.platform.web.JsonFields;
import varanid.intake.platform.web.JsonValue;

/** A report that is to be kept, as it was sent. */
record NewReport(Told told, Instant occurredAt, @Nullable UUID supersedes) {

    private static final int WHO = 200;
    private static final int FEW_WORDS = 500;
    private static final int WORDS = 2000;
    private static final int MOST_LAMPS = 20;
    private static final int MOST_TREATMENTS = 50;
    private static final int MOST_BITES = 20;
    private static final int MOST_QUESTIONS = 20;
    private static final int MOST_CODES = 20;
    private static final int MOST_DAYS = 36_500;
    private static final int MOST_MONTHS = 600;
    private static final int DECIMALS = 2;
    private static final BigDecimal COLDEST = new BigDecimal(-100);
    private static final BigDecimal HOTTEST = new BigDecimal(1000);
    private static final BigDecimal MOST_HOURS = new BigDecimal(2000);

    private static final Pattern EMAIL = Pattern.compile("[^\\s@<>\"(),;:]+@[^\\s@<>\"(),;:]+");

    static Supplier<NewReport> read(JsonFields fields, ReportWords words, Present present) {
        if (Stream.concat(words.fields().stream().map(ReportWords.Field::id), Stream.of("note"))
                .noneMatch(name -> fields.field(name).isGiven())) {
            fields.fault(
                    "says nothing",
                    words.fields().stream()
                            .map(ReportWords.Field::id)
                            .collect(Collectors.joining(", ", "at least one of: ", ", note")));
        }
        Given<Instant> occurredAt = fields.pastInstant("occurredAt", present);
        LocalDate day = LocalDate.ofInstant(occurredAt.orElse(present.now()), present.zone());
        Given<String> reportedBy = fields.text("reportedBy", WHO);
        Given<Told.Last> lastMeal = fields.object("lastMeal", each -> last(each, day, true));
        Given<Told.Last> lastStool = fields.object("lastStool", each -> last(each, day, false));
        Given<Told.Last> lastUrate = fields.object("lastUrate", each -> last(each, day, false));
        Given<Told.Last> lastDrink = fields.object("lastDrink", each -> last(each, day, false));
        Given<String> diet = fields.prose("diet", WORDS);
        Given<String> supplements = fields.prose("supplements", WORDS);
        Given<List<Told.Lamp>> lamps = fields.list("lamps", MOST_LAMPS, item -> item.object(each -> lamp(each, words)));
        Given<Map<String, Told.Warmth>> temperatures =
                fields.entries("temperatures", MOST_CODES, (code, value) -> warmth(code, value, words.temperatures()));
        Given<Told.Journey> transport = fields.object("transport", NewReport::journey);
        Given<Told.Coded> reproductiveState =
                fields.object("reproductiveState", each -> coded(each, words.reproductiveStates()));
        Given<List<Told.Treatment>> treatments =
                fields.list("treatments", MOST_TREATMENTS, item -> item.object(each -> treatment(each, day)));
        Given<Told.Coded> handlingRisk = fields.object("handlingRisk", each -> coded(each, words.handlingRisks()));
        Given<List<Told.Bite>> bites =
                fields.list("bites", MOST_BITES, item -> item.object(each -> bite(each, day, words)));
        Given<List<String>> vulnerable = codes(fields, "vulnerablePeople", words.vulnerablePeople());
        Given<Told.Consent> consent = fields.object("consent", each -> consent(each, words.consents()));
        Given<String> spendingLimit = fields.prose("spendingLimit", FEW_WORDS);
        Given<String> payer = fields.text("payer", WHO);
        Given<List<String>> questions = fields.list("questions", MOST_QUESTIONS, item -> item.prose(WORDS));
        Given<Told.Contact> contact = fields.object("contact", NewReport::contact);
        Given<String> note = fields.prose("note", WORDS);
        Given<UUID> supersedes = fields.id("supersedes");
        return () -> {
            Told told = new Told(
                    reportedBy.orNull(),
                    lastMeal.orNull(),
                    lastStool.orNull(),
                    lastUrate.orNull(),
                    lastDrink.orNull(),
                    diet.orNull(),
                    supplements.orNull(),
                    lamps.orElse(List.of()),
                    temperatures.orElse(Map.of()),
                    transport.orNull(),
                    reproductiveState.orNull(),
                    treatments.orElse(List.of()),
                    handlingRisk.orNull(),
                    bites.orElse(List.of()),
                    vulnerable.orElse(List.of()),
                    consent.orNull(),
                    spendingLimit.orNull(),
                    payer.orNull(),
                    questions.orElse(List.of()),
                    contact.orNull(),
                    note.orNull());
            if (told.with(Told.People.NOBODY).equals(NOTHING)
                    && told.people().equals(onlyReportedBy(reportedBy.orNull()))) {
                throw new IllegalArgumentException("says nothing: every part of it is empty");
            }
            return new NewReport(told, occurredAt.orElse(present.now()), supersedes.orNull());
        };
    }

    private static final Told NOTHING = new Told(
            null, null, null, null, null, null, null, List.of(), Map.of(), null, null, List.of(), null, List.of(),
            List.of(), null, null, null, List.of(), null, null);

    private static Told.People onlyReportedBy(@Nullable String who) {
        return new Told.People(who, Map.of(), List.of(), null, null, null);
    }

    private static Supplier<Told.Last> last(JsonFields fields, LocalDate day, boolean meal) {
        Given<String> food = meal ? fields.prose("food", FEW_WORDS) : null;
        Given<LocalDate> on = notAfter(fields.date("on"), day);
        Given<Integer> daysAgo = fields.integer("daysAgo", 0, MOST_DAYS);
        Given<Boolean> unknown =
                fields.flag("unknown").check(flag -> flag, "is false", "true where nobody knows; else leave it out");
        Given<String> words = fields.prose("words", WORDS);
        if (Stream.of(on, daysAgo, unknown).filter(Given::isGiven).count() > 1) {
            fields.fault("names the day more than once", "one of: on, daysAgo, unknown");
        }
        return () -> {
            Told.Last last = new Told.Last(
                    food == null ? null : food.orNull(),
                    on.isGiven() ? on.get() : daysAgo.find().map(day::minusDays).orElse(null),
                    daysAgo.orNull(),
                    unknown.orNull(),
                    words.orNull());
            if (last.saysNothing()) {
                throw new IllegalArgumentException("says nothing");
            }
            return last;
        };
    }

    private static Supplier<Told.Lamp> lamp(JsonFields fields, ReportWords words) {
        Given<String> place = fields.text("place", WHO);
        Given<ReportWords.Word> type = fields.choice("type", words.lamps(), ReportWords.Word::code);
        Given<Integer> age = fields.integer("ageMonths", 0, MOST_MONTHS);
        Given<String> more = fields.prose("words", FEW_WORDS);
        return () -> {
            Told.Lamp lamp = new Told.Lamp(
                    place.orNull(), type.find().map(ReportWords.Word::code).orElse(null), age.orNull(), more.orNull());
            if (lamp.saysNothing()) {
                throw new IllegalArgumentException("says nothing");
            }
            return lamp;
        };
    }

    private static Given<Told.Warmth> warmth(String code, JsonValue value, List<ReportWords.WarmPlace> places) {
        return places.stream()
                .filter(each -> each.code().equals(code))
                .findFirst()
                .map(place -> value.object(fields -> warmth(fields, place)))
                .orElseGet(() -> value.faulty(
                        "is no temperature of a report",
                        places.stream()
                                .map(ReportWords.WarmPlace::code)
                                .collect(Collectors.joining(", ", "one of: ", ""))));
    }

    private static Supplier<Told.Warmth> warmth(JsonFields fields, ReportWords.WarmPlace place) {
        Given<BigDecimal> value =
                fields.decimal("value", COLDEST, HOTTEST, DECIMALS).required();
        Given<TemperatureUnit> unit = fields.choice("unit", List.of(TemperatureUnit.values()), TemperatureUnit::code)
                .required();
        boolean confirmed = fields.flag("confirmed").orElse(false);
        if (value.isGiven() && unit.isGiven() && !confirmed) {
            Temperature given = new Temperature(value.get(), unit.get());
            if (!place.isLikely(given.celsius())) {
                value.fault(
                        "is " + rounded(given.celsius()) + " Cel = " + rounded(given.fahrenheit())
                                + " [degF], which is unlikely there",
                        "the unit that it was told in, or confirmed: true, where that is what was told");
            }
        }
        return () -> Told.Warmth.of(new Temperature(value.get(), unit.get()), confirmed);
    }

    private static String rounded(BigDecimal degrees) {
        return degrees.scale() > 1
                ? degrees.setScale(1, RoundingMode.HALF_UP).toPlainString()
                : degrees.toPlainString();
    }

    private static Supplier<Told.Journey> journey(JsonFields fields) {
        Given<BigDecimal> hours = fields.decimal("hours", BigDecimal.ZERO, MOST_HOURS, DECIMALS);
        Given<String> words = fields.prose("words", WORDS);
        return () -> {
            if (!hours.isGiven() && !words.isGiven()) {
                throw new IllegalArgumentException("says nothing");
            }
            return new Told.Journey(hours.orNull(), words.orNull());
        };
    }

    private static Supplier<Told.Coded> coded(JsonFields fields, List<ReportWords.Word> choices) {
        Given<ReportWords.Word> code =
                fields.choice("code", choices, ReportWords.Word::code).required();
        Given<String> words = fields.prose("words", WORDS);
        return () -> new Told.Coded(code.get().code(), words.orNull());
    }

    private static Supplier<Told.Treatment> treatment(JsonFields fields, LocalDate day) {
        Given<String> what = fields.prose("what", FEW_WORDS).required();
        Given<String> givenBy = fields.text("givenBy", WHO);
        Given<LocalDate> on = notAfter(fields.date("on"), day);
        Given<String> period = fields.text("period", WHO);
        Given<String> why = fields.prose("why", WORDS);
        Given<String> amount = fields.prose("amount", FEW_WORDS);
        return () -> new Told.Treatment(
                what.get(), givenBy.orNull(), on.orNull(), period.orNull(), why.orNull(), amount.orNull());
    }

    private static Supplier<Told.Bite> bite(JsonFields fields, LocalDate day, ReportWords words) {
        Given<String> who = fields.text("who", WHO);
        Given<LocalDate> on = notAfter(fields.date("on"), day);
        Given<String> bodyPart = fields.text("bodyPart", WHO);
        Given<ReportWords.Word> skin = fields.choice("brokeSkin", words.yesNoUnknown(), ReportWords.Word::code);
        Given<ReportWords.Word> doctor = fields.choice("doctorSeen", words.yesNoUnknown(), ReportWords.Word::code);
        return () -> new Told.Bite(who.orNull(), on.orNull(), bodyPart.orNull(), orUnknown(skin), orUnknown(doctor));
    }

    private static String orUnknown(Given<ReportWords.Word> said) {
        return said.find().map(ReportWords.Word::code).orElse("unknown");
    }

    private static Supplier<Told.Consent> consent(JsonFields fields, List<ReportWords.Word> choices) {
        Given<String> by = fields.text("by", WHO);
        Given<List<String>> given = codes(fields, "given", choices);
        Given<String> words = fields.prose("words", WORDS);
        return () -> {
            Told.Consent consent = new Told.Consent(by.orNull(), given.orElse(List.of()), words.orNull());
            if (consent.saysNothing()) {
                throw new IllegalArgumentException("says nothing");
            }
            return consent;
        };
    }

    /** Codes without repetition; those that say none or unknown stand alone. */
    private static Given<List<String>> codes(JsonFields fields, String name, List<ReportWords.Word> choices) {
        Given<List<ReportWords.Word>> given =
                fields.list(name, MOST_CODES, item -> item.choice(choices, ReportWords.Word::code));
        return given.check(
                        codes -> new HashSet<>(codes).size() == codes.size(),
                        "names one of them twice",
                        "each of them once")
                .check(
                        codes -> codes.size() < 2 || codes.stream().noneMatch(ReportWords.Word::isAlone),
                        "says that there is none, or that nobody knows, beside others",
                        choices.stream()
                                .filter(ReportWords.Word::isAlone)
                                .map(ReportWords.Word::code)
                                .collect(Collectors.joining(" and ", "", " alone")))
                .map(
                        "codes",
                        codes -> codes.stream().map(ReportWords.Word::code).toList());
    }

    private static Supplier<Told.Contact> contact(JsonFields fields) {
        Given<String> name = fields.text("name", WHO);
        Given<String> phone = Contacts.phone(fields, "phone");
        Given<String> email = fields.text("email", 254)
                .check(text -> EMAIL.matcher(text).matches(), "is no e-mail address", "an address with one @ in it");
        Given<String> bestTime = fields.text("bestTime", WHO);
        return () -> {
            Told.Contact contact = new Told.Contact(name.orNull(), phone.orNull(), email.orNull(), bestTime.orNull());
            if (contact.saysNothing()) {
                throw new IllegalArgumentException("says nothing");
            }
            return contact;
        };
    }

    private static Given<LocalDate> notAfter(Given<LocalDate> date, LocalDate day) {
        return date.check(
                given -> !given.isAfter(day),
                "lies after the day of the report",
                "the day of the report, " + day + ", or earlier");
    }
}
