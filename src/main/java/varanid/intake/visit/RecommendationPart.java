package varanid.intake.visit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import varanid.intake.assessment.ReadLook;

/** What the checklist works out from the last look, and why. */
@Component
class RecommendationPart implements PartReader {

    private final LatestLook looks;
    private final StandingReader standing;
    private final HandOverTexts texts;

    RecommendationPart(LatestLook looks, StandingReader standing, HandOverTexts texts) {
        this.looks = looks;
        this.standing = standing;
        this.texts = texts;
    }

    @Override
    public Part part() {
        return Part.RECOMMENDATION;
    }

    @Override
    public List<Statement> read(Visit visit) {
        return looks.find(visit).map(this::said).orElse(List.of());
    }

    private List<Statement> said(ReadLook look) {
        JsonNode document = look.document();
        List<Statement> said = new ArrayList<>();
        String howSoon = texts.headline(look.kept().urgency());
        said.add(computed(
                        "recommendation",
                        look.kept()
                                .isolation()
                                .map(isolation -> howSoon + ". "
                                        + standing.isolation(
                                                isolation, look.kept().isolationRoutes()))
                                .orElse(howSoon))
                .at(look.kept().occurredAt())
                .by(look.edition().id() + " " + look.edition().version())
                .qualified(texts.say("unvalidated"))
                .coded("request-priority", look.kept().urgency(), null)
                .weighing(Statement.Weight.STRONG));
        said.add(computed(
                "range",
                look.kept().settled()
                        ? texts.say("settled")
                        : texts.say(
                                "range",
                                "lowest",
                                texts.headline(document.at("/urgency/lowest")
                                        .stringValue(look.kept().urgency())),
                                "highest",
                                texts.headline(document.at("/urgency/highest")
                                        .stringValue(look.kept().urgency())))));
        List<String> lesser = new ArrayList<>();
        for (JsonNode reason : document.path("reasons")) {
            if (reason.path("urgency").stringValue("").equals(look.kept().urgency())) {
                said.add(reason(reason));
            } else {
                lesser.add(lesser(reason));
            }
        }
        if (!lesser.isEmpty()) {
            said.add(computed("lesser-reasons", String.join("; ", lesser)).weighing(Statement.Weight.SMALL));
        }
        JsonNode score = document.path("score");
        said.add(computed(
                        "score",
                        texts.say(
                                "score",
                                "lowest",
                                number(score.path("lowest")),
                                "highest",
                                number(score.path("highest")),
                                "maximum",
                                number(score.path("maximum"))))
                .weighing(Statement.Weight.SMALL));
        return said;
    }

    /** A finding by its name, for its level stands among what was found; anything else in its own words. */
    private String lesser(JsonNode reason) {
        BigDecimal points = points(reason);
        String name = reason.path("id").isString() && reason.path("level").isString()
                ? HandOverTexts.plain(reason.path("id").stringValue())
                : LookShown.reasonText(reason, texts);
        return name + (points.signum() == 0 ? "" : " " + points.toPlainString());
    }

    private static BigDecimal points(JsonNode reason) {
        return reason.path("points").decimalValue(BigDecimal.ZERO);
    }

    private Statement reason(JsonNode reason) {
        List<String> about = new ArrayList<>();
        BigDecimal points = points(reason);
        if (points.signum() != 0) {
            about.add(texts.say("reason-points", "points", points.toPlainString()));
        }
        if (!reason.path("counted").booleanValue(true)) {
            about.add(texts.say("not-counted"));
        }
        Statement statement = computed("reason", LookShown.reasonText(reason, texts))
                .qualified(about.isEmpty() ? null : String.join("; ", about));
        return reason.path("id").isString() && reason.path("level").isString()
                ? statement.coded(
                        LookShown.FINDING,
                        reason.path("id").stringValue(),
                        reason.path("level").stringValue())
                : statement;
    }

    private Statement computed(String code, String text) {
        return Statement.of(code, Basis.COMPUTED, texts.label(code), text);
    }

    private static String number(JsonNode node) {
        return node.isNumber() ? node.decimalValue().toPlainString() : "?";
    }
}
