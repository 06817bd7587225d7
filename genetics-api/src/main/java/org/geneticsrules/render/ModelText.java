package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.Dominance;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.BoxSpace;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/**
 * A model as text: its loci, what decides each trait, what each locus hides, the populations, the evidence with grades and sources, and
 * what is not modelled with the reasons.
 *
 * <p>Stateless and thread-safe.
 */
public final class ModelText {

    private ModelText() {}

    /**
     * Returns a model in the standard style.
     *
     * @param model a model
     * @return lines that end in a newline
     */
    public static String of(Model model) {
        return of(model, TextStyle.standard().naming(model));
    }

    /**
     * Returns a model in a style.
     *
     * @param model a model
     * @param style how it is laid out
     * @return lines that end in a newline
     */
    public static String of(Model model, TextStyle style) {
        TextLines text = new TextLines(style.width());
        text.paragraph(model.title().orElse(model.id()));
        text.paragraph(model.reference()
                + model.taxon().map(taxon -> ", about " + taxon).orElse(""));
        text.paragraph("Catalogue of traits: " + model.catalogue().reference());
        model.licence().ifPresent(licence -> text.paragraph("Licence: " + licence));
        loci(model, style, text);
        traits(model, text);
        text.heading("What each locus hides");
        text.lines(HidingTable.of(model).text(style).lines().toList());
        populations(model, text);
        evidence(model, text);
        notModelled(model, text);
        return text.toString();
    }

    private static void loci(Model model, TextStyle style, TextLines text) {
        text.heading("Loci");
        for (Locus locus : model.loci().values()) {
            text.item(style.locus(locus.id())
                    + grades(model, locus.dominance(Sex.FEMALE).evidence()));
            text.hanging(
                    "    Alleles: ",
                    "      ",
                    locus.alleles().values().stream()
                            .map(allele -> allele(allele, locus))
                            .collect(Collectors.joining(", ")));
            for (String expression : locus.expressions()) {
                String pairs = locus.pairs().stream()
                        .filter(pair -> locus.expressions(pair).contains(expression))
                        .map(AllelePair::toString)
                        .collect(Collectors.joining(", "));
                text.hanging("    ", "      ", expression + ": " + (pairs.isEmpty() ? "no pair shows this" : pairs));
            }
            if (locus.dependsOnSex()) {
                order(model, locus.dominance(Sex.FEMALE), "    Dominance in females: ", text);
                order(model, locus.dominance(Sex.MALE), "    Dominance in males: ", text);
            } else {
                order(model, locus.dominance(Sex.FEMALE), "    Dominance: ", text);
            }
        }
    }

    private static void order(Model model, Dominance dominance, String label, TextLines text) {
        if (!dominance.order().isEmpty()) {
            text.hanging(
                    label,
                    "      ",
                    dominance.order().stream()
                            .map(order -> order + grades(model, order.evidence().or(dominance::evidence)))
                            .collect(Collectors.joining("; ")));
        }
    }

    private static String allele(Allele allele, Locus locus) {
        boolean wild = locus.wildType().filter(allele::equals).isPresent();
        return allele.symbol() + allele.title().map(title -> " " + title).orElse("") + (wild ? " (wild type)" : "");
    }

    private static void traits(Model model, TextLines text) {
        text.heading("Traits");
        for (TraitRule rule : model.rules().values()) {
            text.item(rule.trait() + (rule.visible() ? "" : " (not seen itself, read by others)"));
            for (Case one : rule.cases()) {
                text.hanging("    ", "      ", one.gives() + " where " + one.when() + support(model, one, rule));
            }
            rule.otherwise()
                    .ifPresent(rest ->
                            text.hanging("    ", "      ", rest.gives() + " otherwise" + support(model, rest, rule)));
            for (Condition without : uncovered(model, rule)) {
                text.hanging("    ", "      ", "no claim is made where " + without);
            }
        }
    }

    /** The combinations that no case covers. */
    private static List<Condition> uncovered(Model model, TraitRule rule) {
        if (rule.otherwise().isPresent()) {
            return List.of();
        }
        Map<String, List<String>> variables = new LinkedHashMap<>();
        for (Case one : rule.cases()) {
            for (String name : one.when().names()) {
                variables.put(
                        name, model.loci().containsKey(name) ? model.locus(name).expressions() : model.states(name));
            }
        }
        BoxSpace space = BoxSpace.of(variables);
        BoxSet rest = space.everything();
        for (Case one : rule.cases()) {
            rest = rest.minus(space.ofDisjoint(List.of(one.when())));
        }
        return rest.boxes();
    }

    private static String support(Model model, Case one, TraitRule rule) {
        return grades(model, one.evidence().or(rule::evidence));
    }

    /** The grade in brackets and the evidence it comes from. */
    private static String grades(Model model, Optional<String> evidence) {
        return evidence.flatMap(id -> Optional.ofNullable(model.evidence().get(id)))
                .map(support -> " [" + support.grade() + ": " + support.id() + "]")
                .orElse("");
    }

    private static void populations(Model model, TextLines text) {
        if (model.populations().isEmpty()) {
            return;
        }
        text.heading("Populations");
        model.populations().values().forEach(population -> {
            text.item("\"" + population.id() + "\""
                    + population.title().map(title -> ": " + title).orElse("")
                    + grades(model, population.evidence()));
            population.frequencies().forEach((locus, alleles) -> {
                List<String> shares = new ArrayList<>();
                alleles.asMap()
                        .forEach((allele, share) ->
                                shares.add(symbol(model, locus, allele) + " " + Numbers.exact(share)));
                text.hanging("    ", "      ", locus + ": " + String.join(", ", shares));
            });
        });
    }

    private static String symbol(Model model, String locus, String allele) {
        return Optional.ofNullable(model.locus(locus).alleles().get(allele))
                .map(Allele::symbol)
                .orElse(allele);
    }

    private static void evidence(Model model, TextLines text) {
        text.heading("Evidence");
        text.paragraph("Grades, strongest first:");
        for (Grade grade : Grade.values()) {
            text.item(grade + ": " + grade.meaning());
        }
        text.blank();
        for (Evidence support : model.evidence().values()) {
            text.item("[" + support.grade() + "] " + support.id() + ": " + support.claim());
            support.sources().forEach(source -> text.hanging("    Source: ", "      ", source));
            support.dissent().forEach(view -> text.hanging("    Others hold: ", "      ", view));
        }
    }

    private static void notModelled(Model model, TextLines text) {
        if (!model.notModelled().isEmpty()) {
            text.heading("Not modelled");
            model.notModelled().forEach((trait, reason) -> text.item(trait + ": " + reason));
        }
    }
}
