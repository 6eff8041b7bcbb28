package varanid.intake.page.checklist;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import varanid.intake.service.Answer;
import varanid.intake.service.Browser;
import varanid.intake.service.Organisations;
import varanid.intake.service.ServiceTest;

/** The checklist to read, without scripts. */
@ServiceTest
class ChecklistPageIT {

    private static final String PATH = "/checklist/varanid-intake/versions/1";

    @Autowired
    Organisations organisations;

    private Browser browser;

    @BeforeEach
    void signIn() {
        Organisations.Organisation rescue = organisations.create();
        browser = Browser.signedIn(rescue, rescue.keeper());
    }

    @Test
    void theNewestVersionIsShownFirst() {
        assertThat(open("/checklist")).isEqualTo(open(PATH));
    }

    private String open(String path) {
        Answer answer = browser.get(path);
        assertThat(answer.status()).as(answer.body()).isEqualTo(200);
        return answer.body();
    }
}
