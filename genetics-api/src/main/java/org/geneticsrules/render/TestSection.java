package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.geneticsrules.answer.Answer;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.TestResult;
import org.geneticsrules.cross.Detection;
import org.geneticsrules.probability.Probability;

/** What test matings would take, allele by allele. */
final class TestSection {

    private final Answer answer;
    private final TextStyle style;

    TestSection(Answer answer, TextStyle style) {
        this.answer = answer;
        this.style = style;
    }

    void write(TextLines text) {
        Map<HiddenAllele, List<TestResult>> byAllele = new LinkedHashMap<>();
        answer.tests()
                .forEach(test -> byAllele.computeIfAbsent(test.allele(), allele -> new ArrayList<>())
                        .add(test));
        byAllele.forEach((allele, tests) -> {
            text.heading("Whether it carries " + style.allele(allele.allele()) + ", at locus "
                    + style.locus(allele.locus()));
            List<TestResult> counted =
                    tests.stream().filter(test -> !test.courses().isEmpty()).toList();
            if (!counted.isEmpty()) {
                numbers(counted, text);
            }
            tests.forEach(test -> remark(test, text));
        });
    }

    private void numbers(List<TestResult> tests, TextLines text) {
        List<Probability> confidences = tests.get(0).courses().get(0).needed().stream()
                .map(TestResult.Needed::confidence)
                .toList();
        List<String> header = new ArrayList<>(List.of("Mate", "Counted"));
        confidences.forEach(confidence -> header.add(Numbers.percent(confidence)));
        header.add("Missed at best");
        TextTable table = new TextTable(header).numbersFrom(2);
        for (TestResult test : tests) {
            for (TestResult.Course course : told(test)) {
                List<String> cells = new ArrayList<>(List.of(test.mate().name(), counted(course, test)));
                course.needed().forEach(needed -> cells.add(number(needed.toShow())));
                cells.add(Numbers.exact(course.detection().limit()));
                table.row(cells);
            }
        }
        text.lines(table.lines(style.width()));
        for (TestResult test : tests) {
            text.item("By " + test.mate().name() + " each of these proves it: "
                    + test.signs().stream()
                            .map(sign -> Looks.words(sign, test.traits()))
                            .collect(Collectors.joining("; "))
                    + ".");
            told(test).forEach(course -> belief(course, test, text));
        }
    }

    /** One course for all populations that come to the same. */
    private static List<TestResult.Course> told(TestResult test) {
        List<TestResult.Course> told = new ArrayList<>();
        for (TestResult.Course course : test.courses()) {
            if (told.stream().noneMatch(other -> alike(other, course))) {
                told.add(course);
            }
        }
        return told;
    }

    private static boolean alike(TestResult.Course one, TestResult.Course other) {
        return one.step() == other.step()
                && one.bound() == other.bound()
                && one.detection().equals(other.detection());
    }

    private String counted(TestResult.Course course, TestResult test) {
        String words = switch (course.step()) {
            case YOUNG_OF_ONE_MATE -> answer.question().young().many() + " of one mate";
            case LITTERS_OF_ONE_MATE -> "litters of one mate";
            case MATES -> "mates in turn";
        };
        String populations = test.courses().stream()
                .filter(other -> alike(course, other))
                .flatMap(other -> other.population().stream())
                .map(population -> "\"" + population.id() + "\"")
                .collect(Collectors.joining(" or "));
        return words + (course.bound() ? ", at most" : "") + (populations.isEmpty() ? "" : ", as in " + populations);
    }

    private static String number(Optional<Detection.Fewest> fewest) {
        return fewest.map(found ->
                        found instanceof Detection.Reached reached ? Integer.toString(reached.steps()) : "never")
                .orElse("too many");
    }

    /** What is left to believe, where it was said how likely the case was before. */
    private void belief(TestResult.Course course, TestResult test, TextLines text) {
        String listed = course.needed().stream()
                .filter(needed -> needed.toBelieve().isPresent())
                .map(needed -> number(needed.toBelieve()) + " for " + Numbers.percent(needed.confidence()))
                .collect(Collectors.joining(", "));
        if (!listed.isEmpty()) {
            text.hanging(
                    "    ",
                    "    ",
                    "Without a sign, from what was held likely before, until it is clear (" + counted(course, test)
                            + "): " + listed + ".");
        }
    }

    private void remark(TestResult test, TextLines text) {
        String name = test.mate().name();
        if (!test.exclusions().isEmpty()) {
            text.item("Left out: " + name + ".");
            test.exclusions()
                    .forEach(exclusion -> text.hanging(
                            "    ",
                            "    ",
                            "\"" + exclusion.name() + "\" (" + exclusion.about() + "): " + exclusion.line()));
        }
        if (test.tellsNothing()) {
            text.item(
                    "By " + name + " nothing that " + answer.question().young().any() + " could show would prove it.");
        } else if (test.lacksFrequencies()) {
            text.item("By " + name + " a sign is possible, but no population says how often: "
                    + test.signs().stream()
                            .map(sign -> Looks.words(sign, test.traits()))
                            .collect(Collectors.joining("; "))
                    + ".");
        }
    }
}
