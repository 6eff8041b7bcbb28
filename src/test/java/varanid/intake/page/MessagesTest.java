package varanid.intake.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import org.junit.jupiter.api.Test;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;

/** The texts of pages: of two files that say the same key, only the first would ever be read. */
class MessagesTest {

    @Test
    void noTextIsInTwoFiles() throws IOException {
        PathMatchingResourcePatternResolver files = new PathMatchingResourcePatternResolver();
        List<Resource> all = new ArrayList<>(List.of(files.getResources("classpath*:pages/*.properties")));
        all.add(files.getResource("classpath:messages.properties"));
        assertThat(all).hasSizeGreaterThan(5);
        Map<String, List<String>> filesOfKey = new HashMap<>();
        for (Resource file : all) {
            Properties texts = new Properties();
            try (InputStream content = file.getInputStream()) {
                texts.load(content);
            }
            texts.stringPropertyNames()
                    .forEach(key -> filesOfKey
                            .computeIfAbsent(key, each -> new ArrayList<>())
                            .add(String.valueOf(file.getFilename())));
        }
        filesOfKey.values().removeIf(in -> in.size() == 1);
        assertThat(filesOfKey).isEmpty();
    }
}
