package varanid.intake.page.worklist;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.web.util.HtmlUtils;
import varanid.intake.page.worklist.TestRescue.Rescue;
import varanid.intake.service.Answer;
import varanid.intake.service.Browser;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** The first page, without scripts. */
@ServiceTest
class WorklistPageIT {

    private static final Pattern ANIMAL = Pattern.compile("class=\"animal\"[^>]* href=\"/animals/([0-9a-f-]{36})\"");
    private static final Pattern NEXT = Pattern.compile("rel=\"next\" href=\"([^\"]+)\"");

    @Autowired
    TestRescue rescues;

    @Autowired
    Organisations organisations;

    @ParameterizedTest
    @CsvSource({
        "/, /act-now",
        "/?only=due, /act-now?only=due",
        "/?only=overdue, /act-now?only=overdue",
        "/?only=worse, /act-now?only=worse",
        "/?only=urgent, /act-now?only=urgent",
        "/?room=00000000-0000-0001-0000-000000000001, /act-now?room=00000000-0000-0001-0000-000000000001",
        "/?view=rounds, /rounds",
        "/?view=rounds&due=true, /rounds?due=true",
        "/?view=rounds&room=00000000-0000-0002-0000-000000000002, /rounds?room=00000000-0000-0002-0000-000000000002"
    })
    void listsWhatTheApiListsInTheSameOrder(String page, String list) {
        Rescue rescue = rescues.furnished();
        List<String> expected = rescue.listed("/api/v1/worklist" + list);
        assertThat(expected).isNotEmpty();
        assertThat(animals(open(rescue, page))).containsExactlyElementsOf(expected);
    }

    private static Answer open(Rescue rescue, String path) {
        return open(Browser.signedIn(rescue.organisation(), rescue.keeper()), path);
    }

    private static Answer open(Browser browser, String path) {
        Answer answer = browser.get(path);
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer;
    }

    private static List<String> animals(Answer page) {
        List<String> ids = new ArrayList<>();
        Matcher matcher = ANIMAL.matcher(page.body());
        while (matcher.find()) {
            ids.add(matcher.group(1));
        }
        return ids;
    }

    private static Optional<String> next(Answer page) {
        Matcher matcher = NEXT.matcher(page.body());
        return matcher.find() ? Optional.of(HtmlUtils.htmlUnescape(matcher.group(1))) : Optional.empty();
    }
}
