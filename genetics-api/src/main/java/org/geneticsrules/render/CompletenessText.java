package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.geneticsrules.expression.Completeness;
import org.geneticsrules.model.Statement;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;

/**
 * A report on a model as text, section by section; a section without findings says so in one line.
 *
 * <p>Stateless and thread-safe.
 */
public final class CompletenessText {

    private static final Map<Completeness.Part, String> NEVER = new EnumMap<>(Map.of(
            Completeness.Part.EXPRESSION, "Expressions that no genotype shows:",
            Completeness.Part.DOMINANCE, "Statements of dominance that decide about no genotype:",
            Completeness.Part.VIABILITY, "Statements about viability that concern no genotype:",
            Completeness.Part.CASE, "Cases that never hold:",
            Completeness.Part.OTHERWISE, "An \"otherwise\" for which the cases leave nothing:",
            Completeness.Part.PROGRESSION_STATE, "Steps from states in which a progression never is:",
            Completeness.Part.THRESHOLD_STATE, "Classes that no sum of doses reaches:",
            Completeness.Part.STATE, "States that are never there or never seen:",
            Completeness.Part.UNBORN_STATE, "States that only animals have that are never born:",
            Completeness.Part.MASK, "Masks that are never active:"));

    private final Completeness report;
    private final TextLines text;

    private CompletenessText(Completeness report, TextStyle style) {
        this.report = report;
        this.text = new TextLines(style.width());
    }

    /**
     * Returns a report in the standard style.
     *
     * @param report a report
     * @return lines that end in a newline
     */
    public static String of(Completeness report) {
        return of(report, TextStyle.standard());
    }

    /**
     * Returns a report in a style.
     *
     * @param report a report
     * @param style how wide its lines are; loci go by their letters, since a report is read beside the document
     * @return lines that end in a newline
     */
    public static String of(Completeness report, TextStyle style) {
        CompletenessText page = new CompletenessText(report, style);
        page.text.paragraph("How complete is " + report.model() + "?");
        page.text.paragraph(
                "A finding is no error by itself: a gap may be an honest limit of what is known. Contradictions are errors.");
        page.conflicts();
        page.noClaim();
        page.unreached();
        page.alike();
        page.limited();
        page.evidence();
        return page.text.toString();
    }

    private void conflicts() {
        text.heading("Contradictions");
        if (report.conflicts().isEmpty()) {
            text.paragraph("None: no two statements contradict each other.");
        }
        report.conflicts().forEach(problem -> text.item(problem.toString()));
    }

    private void noClaim() {
        text.heading("What the model says nothing about");
        if (report.withoutRule().isEmpty() && report.gaps().isEmpty()) {
            text.paragraph("Nothing: every trait of the catalogue has a state for every genotype.");
        }
        for (Completeness.WithoutRule trait : report.withoutRule()) {
            text.item(trait.trait() + " has no rule: " + trait.reason().orElse("no reason is stated"));
        }
        for (Completeness.Gap gap : report.gaps()) {
            text.item(gap.trait() + ": no claim is made "
                    + switch (gap.about()) {
                        case EITHER -> "about what such animals are or show; answers call it not modelled";
                        case OWN_STATE ->
                            "about its own state; where a mask covers it, what is seen is known all the same";
                        case SEEN -> "about what is seen, because it is open whether a mask covers it";
                    });
            for (Condition box : gap.where()) {
                text.hanging("    ", "      ", "where " + box);
            }
            if (!gap.all()) {
                text.hanging("    ", "      ", "and in more such cases than anybody would read");
            }
        }
    }

    private void unreached() {
        text.heading("What no animal reaches");
        if (report.unreached().isEmpty()) {
            text.paragraph("Nothing: every expression, case, mask and state is met in some animal.");
        }
        for (Completeness.Part part : Completeness.Part.values()) {
            List<Completeness.Unreached> found = report.unreached().stream()
                    .filter(one -> one.part() == part)
                    .toList();
            if (!found.isEmpty()) {
                text.paragraph(Optional.ofNullable(NEVER.get(part)).orElse(part.word()));
                for (Completeness.Unreached one : found) {
                    text.item(one.name() + " (" + one.pointer() + ")"
                            + (one.underOtherDominance() ? ", which another dominance could reach" : ""));
                }
            }
        }
    }

    private void alike() {
        text.heading("What nothing tells apart");
        text.paragraph(
                "Neither by what is seen at any stage nor by the chance to live, all else and all chance being the same.");
        if (report.alikeAlleles().isEmpty()
                && report.alikeGenotypes().isEmpty()
                && report.idle().isEmpty()) {
            text.paragraph("Nothing: every genotype of every locus can make a difference.");
        }
        for (Completeness.Idle one : report.idle()) {
            text.item((one.pointer().startsWith("/loci/") ? "all genotypes of locus " : "all states of inner trait ")
                    + one.name()
                    + (one.read() ? ", although rules name it" : ", which no rule names"));
        }
        groups(report.alikeAlleles(), "alleles");
        groups(
                report.alikeGenotypes().stream()
                        .filter(one -> report.idle().stream()
                                .noneMatch(idle -> idle.name().equals(one.locus())))
                        .toList(),
                "genotypes");
    }

    private void groups(List<Completeness.Alike> found, String what) {
        for (Completeness.Alike one : found) {
            text.item(what + " of locus " + one.locus()
                    + one.sex().map(sex -> " in " + sex.word() + "s").orElse("") + ": "
                    + one.groups().stream()
                            .map(group -> String.join(", ", group))
                            .collect(Collectors.joining(" | ")));
        }
    }

    private void limited() {
        text.heading("What is seen only in some animals or at some times");
        if (report.limited().isEmpty()) {
            text.paragraph("Nothing: every state is seen in both sexes and at every age and season, or never.");
        }
        for (Completeness.Limited one : report.limited()) {
            List<String> bounds = new ArrayList<>();
            one.sex().ifPresent(sex -> bounds.add("only in " + sex.word() + "s"));
            if (!one.seasons().isEmpty()) {
                bounds.add("only in " + String.join(" or ", one.seasons()));
            }
            if (!one.from().equals(LifeStage.unstated())) {
                bounds.add("not before " + one.from());
            }
            if (!one.until().equals(LifeStage.unstated())) {
                bounds.add("not after " + one.until());
            }
            text.item(one.trait() + " " + one.state() + ": " + String.join(", ", bounds));
        }
    }

    private void evidence() {
        text.heading("Evidence");
        report.graded().forEach((grade, statements) -> {
            text.paragraph(grade + " (" + grade.meaning() + "), " + statements.size() + ":");
            statements.forEach(this::statement);
        });
        text.paragraph(
                report.withoutEvidence().isEmpty()
                        ? "Every statement names its evidence."
                        : "No evidence stated, counted as conjecture, "
                                + report.withoutEvidence().size() + ":");
        report.withoutEvidence().forEach(this::statement);
    }

    private void statement(Statement statement) {
        text.item(statement.text() + " (" + statement.pointer() + ")");
    }
}
