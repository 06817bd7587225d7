package org.geneticsrules.examples;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Descriptions of ferrets from the command line. */
@Tag("default-jdk")
class DescribeCommandTest {

    @Test
    void a_silver_that_darkened_is_one_animal_unless_silver_never_darkens() {
        Run run = Run.of(
                "describe",
                "--look",
                "white guard hairs: about half, eye colour: dark @ moult 3, winter",
                "--look",
                "white guard hairs: mostly coloured, pads: other @ moult 5, winter");
        assertEquals(ExitCodes.ANSWERED, run.code(), run.err());
        run.out().lines().forEach(line -> assertTrue(line.length() <= 100, line));
        String text = run.out().replaceAll("\\s+", " ");
        assertTrue(
                text.startsWith(
                        "The animal shows eye colour dark, white guard hairs mostly coloured, pads other. All of it that"
                                + " the model can judge can be of one animal under this model. Otherwise if \"A silver coat only ever whitens\" is true:"),
                text);
        assertTrue(text.contains("never to reject an animal"), text);
        assertTrue(text.contains("- less each time, or the same"), text);
    }

    @Test
    void what_no_one_animal_shows_is_undecided_and_programs_are_told_the_same() {
        String[] line = {
            "describe",
            "--alone",
            "--sex",
            "female",
            "--look",
            "hue: black, eye colour: pink @ moult 2",
            "--format",
            "json"
        };
        Run run = Run.of(line);
        assertEquals(ExitCodes.UNDECIDED, run.code(), run.err());
        JsonNode answer = JsonMapper.shared().readTree(run.out());
        assertEquals("described-answer", answer.get("kind").asString());
        assertEquals("not one animal", answer.get("fit").asString());
        assertEquals(2, answer.get("apart").size());
        assertTrue(answer.get("cautions").toString().contains("albino vision"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "describe | Missing required option: '--look=LOOK'",
                "describe --look hu:black | did you mean \"hue\"?",
                "describe --look sex:female | only a sex",
                "describe --look sex:female,hue:black --sex male | different sexes",
                "describe --look hue:black@autumn | unknown season",
                "describe --look hue:black --format xml | unknown word \"xml\""
            })
    void what_is_mistyped_is_named_and_nothing_is_printed(String line, String expected) {
        Run run = Run.of(line.split(" "));
        assertEquals(ExitCodes.NOT_UNDERSTOOD, run.code());
        assertEquals("", run.out());
        assertTrue(run.err().contains(expected), run.err());
        assertFalse(run.err().contains("\tat "), run.err());
    }

    @Test
    void mistakes_in_several_looks_are_told_together() {
        Run run = Run.of("describe", "--look", "hu: black", "--look", "hue: blak");
        assertTrue(run.err().contains("did you mean \"hue\"?"), run.err());
        assertTrue(run.err().contains("did you mean \"black\"?"), run.err());
    }
}
