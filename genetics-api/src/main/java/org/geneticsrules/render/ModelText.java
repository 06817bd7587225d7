package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.geneticsrules.document.Reference;
import org.geneticsrules.evidence.Evidence;
import org.geneticsrules.evidence.Grade;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.BoxSpace;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;

/**
 * A model as text: its loci, how they are handed down together, who lives, what decides each trait, what each locus hides, the populations, the evidence with grades and sources, and
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
        if (!model.derivedFrom().isEmpty()) {
            text.paragraph("Made from " + model.derivedFrom().get(0) + " by patch "
                    + model.derivedFrom().stream()
                            .skip(1)
                            .map(Reference::toString)
                            .collect(Collectors.joining(", ")));
        }
        text.paragraph("Catalogue of traits: " + model.catalogue().reference());
        model.licence().ifPresent(licence -> text.paragraph("Licence: " + licence));
        new LocusLines(model, style, text).write();
        groups(model, text);
        viability(model, text);
        traits(model, text);
        text.heading("What each locus hides");
        text.lines(HidingTable.of(model).text(style).lines().toList());
        HidingTable.withoutLocus(model).forEach(mask -> text.item(words(model, mask)));
        populations(model, text);
        evidence(model, text);
        notModelled(model, text);
        return text.toString();
    }

    private static void groups(Model model, TextLines text) {
        if (model.groups().isEmpty()) {
            return;
        }
        text.heading("Linkage");
        for (LinkageGroup group : model.groups().values()) {
            text.item("\"" + group.id() + "\""
                    + group.title().map(title -> " (" + title + ")").orElse("") + ": " + group.words()
                    + grades(model, group.evidence()));
        }
        if (model.loci().keySet().stream()
                .anyMatch(locus -> model.groupOf(locus).isEmpty())) {
            text.item("All other loci are on autosomes and unlinked.");
        }
    }

    private static void viability(Model model, TextLines text) {
        if (!model.viability().isEmpty()) {
            text.heading("Viability");
            model.viability()
                    .values()
                    .forEach(stated ->
                            text.item("\"" + stated.id() + "\": " + stated.words() + grades(model, stated.evidence())));
        }
    }

    private static void traits(Model model, TextLines text) {
        text.heading("Traits");
        for (TraitRule rule : model.rules().values()) {
            text.item(rule.trait() + (rule.visible() ? "" : " (not seen itself, read by others)"));
            for (Case one : rule.cases()) {
                text.hanging(
                        "    ",
                        "      ",
                        one.gives() instanceof CaseState.Certain
                                ? one.gives() + " where " + one.when() + support(model, one, rule)
                                : "where " + one.when() + ": " + one.gives() + support(model, one, rule));
            }
            rule.otherwise()
                    .ifPresent(rest -> text.hanging(
                            "    ",
                            "      ",
                            rest.gives() instanceof CaseState.Certain
                                    ? rest.gives() + " otherwise" + support(model, rest, rule)
                                    : "otherwise: " + rest.gives() + support(model, rest, rule)));
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
                variables.put(name, values(model, name));
            }
        }
        BoxSpace space = BoxSpace.of(variables);
        BoxSet rest = space.everything();
        for (Case one : rule.cases()) {
            rest = rest.minus(space.ofDisjoint(List.of(one.when())));
        }
        return rest.boxes();
    }

    private static List<String> values(Model model, String variable) {
        return switch (variable) {
            case Sex.VARIABLE -> Sex.words();
            case LifeStage.SEASON -> model.catalogue().seasons();
            default ->
                model.loci().containsKey(variable) ? model.locus(variable).expressions() : model.states(variable);
        };
    }

    private static String words(Model model, Mask mask) {
        return Objects.requireNonNull(model.statements().get(Pointer.of("masks", mask.id())))
                .text();
    }

    private static String support(Model model, Case one, TraitRule rule) {
        return grades(model, one.evidence().or(rule::evidence));
    }

    /** The grade in brackets and the evidence it comes from. */
    static String grades(Model model, Optional<String> evidence) {
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
