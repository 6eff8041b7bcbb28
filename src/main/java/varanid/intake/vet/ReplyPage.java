package varanid.intake.vet;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.thymeleaf.ITemplateEngine;
import org.thymeleaf.context.Context;
import varanid.intake.assessment.KeptLook;
import varanid.intake.share.OpenedLink;
import varanid.intake.vet.VetAnswer.Ruling;
import varanid.intake.vet.VetAnswer.SawAnimal;

/** Writes the form and the answer that it became. Everything that people wrote is escaped by the template. */
@Component
class ReplyPage {

    /** The field with the key that the form is given out with. */
    static final String KEY = "formKey";

    private final ITemplateEngine templates;
    private final Words words;
    private final Terms terms;

    ReplyPage(ITemplateEngine templates, Words words, Terms terms) {
        this.templates = templates;
        this.words = words;
        this.terms = terms;
    }

    /** One choice of several. */
    record Choice(String code, String label) {}

    /** A sign of the last look. */
    record Sign(String finding, String level, String label) {}

    /** A label and what stands under it. */
    record Line(String label, String text) {}

    /** The form, empty. */
    String form(OpenedLink link, Replies.Known known) {
        return form(link, known, null, Map.of());
    }

    /** @param faults by field, as {@link AnswerForm#faults} gives them */
    String form(OpenedLink link, Replies.Known known, @Nullable AnswerForm filled, Map<String, List<String>> faults) {
        String seen = filled == null ? "" : filled.typed("seenUpTo");
        String key = filled == null ? "" : filled.typed(KEY);
        Optional<KeptLook> look = known.look().map(it -> it.kept());
        Context it = new Context(Locale.ENGLISH);
        it.setVariable("form", new Filled(filled, faults));
        it.setVariable("t", new Texts(words));
        it.setVariable("title", title(known));
        it.setVariable("about", about(known));
        it.setVariable("recipient", words.form("sent-for", "recipient", link.recipient()));
        it.setVariable("trust", words.form(link.confirms() ? "confirmed" : "unconfirmed"));
        // What was shown first is what was read: a form that is shown again for its faults keeps that moment.
        it.setVariable("seenUpTo", seen.isEmpty() ? known.at().toString() : seen);
        it.setVariable("shownAt", words.form("shown-at", "moment", shownAt(seen, known, link.zone())));
        it.setVariable("formKey", key.isEmpty() ? UUID.randomUUID().toString() : key);
        it.setVariable("alert", known.holds().alert().orElse(null));
        it.setVariable("headline", known.holds().headline());
        it.setVariable(
                "workedOut",
                known.holds()
                        .computed()
                        .map(computed -> words.form("worked-out", "headline", computed.headline()))
                        .orElse(null));
        it.setVariable(
                "looked",
                look.map(kept -> words.form("looked-at", "moment", Words.moment(kept.occurredAt(), link.zone())))
                        .orElse(words.form("no-look")));
        it.setVariable(
                "signs",
                look.stream()
                        .flatMap(kept -> kept.signs().stream())
                        .filter(KeptLook.Sign::counts)
                        .map(sign -> new Sign(sign.finding(), sign.level(), sign.told()))
                        .toList());
        it.setVariable("unseen", look.map(KeptLook::unseenMustSee).orElse(List.of()));
        it.setVariable(
                "saw",
                Arrays.stream(SawAnimal.values())
                        .map(each -> new Choice(each.code(), words.sawAnimal(each)))
                        .toList());
        it.setVariable("urgencies", choices(Urgency.CODES.stream().map(code -> new Choice(code, words.urgency(code)))));
        it.setVariable(
                "isolations",
                choices(Stream.of(AnswerRules.STANDARD, AnswerRules.STRICT)
                        .map(code -> new Choice(code, words.isolation(code)))));
        it.setVariable(
                "approvals",
                choices(Stream.of(
                        new Choice("true", words.form("approves-yes")),
                        new Choice("false", words.form("approves-no")))));
        it.setVariable(
                "causes",
                terms.causes().stream()
                        .map(code -> new Choice(code, terms.causeLabel(code)))
                        .toList());
        it.setVariable(
                "rulings",
                Arrays.stream(Ruling.values())
                        .map(each -> new Choice(each.code(), words.ruling(each)))
                        .toList());
        it.setVariable("cautions", words.cautions());
        return templates.process("reply", it);
    }

    /** The answer as it was kept. */
    String kept(OpenedLink link, VetAnswer answer) {
        Context it = new Context(Locale.ENGLISH);
        it.setVariable("t", new Texts(words));
        it.setVariable("trust", words.form(answer.confirmed() ? "kept-confirmed" : "kept-unconfirmed"));
        it.setVariable("keptAt", words.form("kept-at", "moment", Words.moment(answer.recordedAt(), link.zone())));
        it.setVariable("lines", lines(answer));
        it.setVariable("cautions", words.cautions());
        return templates.process("reply-kept", it);
    }

    private List<Choice> choices(Stream<Choice> choices) {
        return Stream.concat(Stream.of(new Choice("", words.form("urgency-none"))), choices)
                .toList();
    }

    private static String title(Replies.Known known) {
        return known.animal()
                .name()
                .or(() -> known.animal().tag())
                .or(() -> known.animal().species())
                .orElse("Monitor lizard");
    }

    private static String about(Replies.Known known) {
        List<String> about = new ArrayList<>();
        known.animal().tag().ifPresent(about::add);
        known.animal().species().ifPresent(about::add);
        return String.join(" · ", about);
    }

    private static String shownAt(String seen, Replies.Known known, ZoneId zone) {
        try {
            return Words.moment(seen.isEmpty() ? known.at() : Instant.parse(seen), zone);
        } catch (DateTimeException e) {
            return Words.moment(known.at(), zone);
        }
    }

    /** Everything that it says, labelled, in the order of the form. */
    List<Line> lines(VetAnswer answer) {
        List<Line> lines = new ArrayList<>();
        lines.add(new Line(words.form("saw"), words.sawAnimal(answer.sawAnimal())));
        answer.urgency().ifPresent(code -> lines.add(new Line(words.form("urgency"), words.urgency(code))));
        answer.isolation().ifPresent(code -> lines.add(new Line(words.form("isolation"), words.isolation(code))));
        answer.findings()
                .forEach(said -> lines.add(new Line(
                        words.verdict(said.verdict()),
                        joined(said.finding().map(id -> terms.tell(id, said.level())), said.words()))));
        answer.tests()
                .forEach(test -> lines.add(new Line(
                        words.form("tests"),
                        joined(Optional.of(test.words()), test.on().map(Words::day), test.result()))));
        answer.instructions().ifPresent(text -> lines.add(new Line(words.form("instructions"), text)));
        answer.rulings()
                .forEach(said -> lines.add(new Line(terms.causeLabel(said.cause()), words.ruling(said.ruling()))));
        answer.quarantineUntil().ifPresent(day -> lines.add(new Line(words.form("until"), Words.day(day))));
        answer.approvesRelease()
                .ifPresent(yes ->
                        lines.add(new Line(words.form("approves"), words.form(yes ? "approves-yes" : "approves-no"))));
        answer.nextVisit().ifPresent(day -> lines.add(new Line(words.form("visit"), Words.day(day))));
        answer.words().ifPresent(text -> lines.add(new Line(words.form("words"), text)));
        lines.add(new Line(words.form("name"), answer.writer().name()));
        lines.add(new Line(words.form("practice"), answer.writer().practice()));
        lines.add(new Line(words.form("licence"), answer.writer().licenceStatement()));
        answer.writer().contact().ifPresent(text -> lines.add(new Line(words.form("contact"), text)));
        return lines;
    }

    @SafeVarargs
    private static String joined(Optional<String>... parts) {
        return String.join("\n", Arrays.stream(parts).flatMap(Optional::stream).toList());
    }

    /** The texts of the form, for the template. */
    public record Texts(Words words) {
        public String of(String code) {
            return words.form(code);
        }

        public String of(String code, String name, String value) {
            return words.form(code, name, value);
        }
    }

    /** What was typed, and what is wrong with it, for the template. */
    public record Filled(@Nullable AnswerForm typed, Map<String, List<String>> faults) {

        public String value(String field) {
            return typed == null ? "" : typed.typed(field);
        }

        /** What a browser takes for the text of a large field: it drops one line break at its beginning. */
        public String area(String field) {
            String text = value(field);
            return text.startsWith("\n") ? "\n" + text : text;
        }

        public boolean is(String field, String code) {
            return value(field).equals(code);
        }

        public boolean isFaulty() {
            return !faults.isEmpty();
        }

        public boolean isWrong(String field) {
            return faults.containsKey(field);
        }

        public List<String> wrong(String field) {
            return Optional.ofNullable(faults.get(field)).orElse(List.of());
        }
    }
}
