package org.geneticsrules.testing;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.Dominance;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/**
 * A model with other names for its loci, alleles and expressions, and its loci and alleles declared in reverse order: the same
 * genetics in other letters.
 *
 * @param model the renamed model
 */
public record Relabelled(Model model) {

    /**
     * Renames a model.
     *
     * @param original a model
     * @return the renamed model
     */
    public static Relabelled of(Model original) {
        ModelBuilder builder = Model.builder(original.id() + ".renamed", original.version(), original.catalogue());
        original.evidence().values().forEach(builder::evidence);
        for (Locus locus : reversed(original.loci()).values()) {
            builder.locus(locus(locus.id()), described -> {
                described.symbol("Renamed" + locus.symbol());
                reversed(locus.alleles()).keySet().forEach(allele -> described.allele(Allele.of(allele(allele))));
                described.expressions(
                        locus.expressions().stream().map(Relabelled::expression).toArray(String[]::new));
                locus.dominance(Sex.FEMALE)
                        .order()
                        .forEach(order -> described.order(new Dominance.Order(
                                allele(order.dominant()), allele(order.recessive()), order.evidence())));
                locus.dominance(Sex.FEMALE)
                        .shows()
                        .forEach(shown -> described.shows(
                                allele(shown.first())
                                        + shown.second()
                                                .map(second -> "/" + allele(second))
                                                .orElse(""),
                                expression(shown.expression()),
                                shown.evidence()));
            });
        }
        for (TraitRule rule : original.rules().values()) {
            builder.trait(rule.trait(), described -> {
                if (!rule.visible()) {
                    described.inner(rule.states().toArray(String[]::new));
                }
                rule.cases()
                        .forEach(one -> described.when(
                                new Case(one.id(), condition(original, one.when()), one.gives(), one.evidence())));
                rule.otherwise().ifPresent(rest -> described.otherwise(rest.gives(), rest.evidence()));
            });
        }
        for (Mask mask : original.masks().values()) {
            builder.mask(new Mask(
                    mask.id(), condition(original, mask.when()), mask.covers(), mask.over(), Optional.empty()));
        }
        return new Relabelled(builder.build());
    }

    /**
     * Renames a genotype of the original model.
     *
     * @param original a genotype
     * @return the same genotype in the other letters
     */
    public Genotype genotype(Genotype original) {
        Map<String, String> plain = new LinkedHashMap<>();
        original.pairs()
                .forEach((locus, pair) -> plain.put(
                        locus(locus),
                        allele(pair.alleles().get(0).id()) + "/"
                                + allele(pair.alleles().get(1).id())));
        return RandomModels.genotype(model, plain);
    }

    private static Condition condition(Model model, Condition condition) {
        Condition renamed = Condition.always();
        for (Map.Entry<String, Allowed> variable : condition.variables().entrySet()) {
            Allowed allowed = variable.getValue();
            if (model.loci().containsKey(variable.getKey())) {
                String[] values =
                        allowed.values().stream().map(Relabelled::expression).toArray(String[]::new);
                renamed = renamed.and(
                        locus(variable.getKey()), allowed.except() ? Allowed.allBut(values) : Allowed.only(values));
            } else {
                renamed = renamed.and(variable.getKey(), allowed);
            }
        }
        return renamed;
    }

    private static String locus(String name) {
        return "renamed " + name;
    }

    private static String allele(String name) {
        return "z" + name.replace("^", "*");
    }

    private static String expression(String name) {
        return "renamed " + name;
    }

    private static <V> Map<String, V> reversed(Map<String, V> map) {
        Map<String, V> result = new LinkedHashMap<>();
        map.keySet().stream()
                .sorted((a, b) -> Integer.compare(position(map, b), position(map, a)))
                .forEach(key -> result.put(key, map.get(key)));
        return result;
    }

    private static int position(Map<String, ?> map, String key) {
        return map.keySet().stream().toList().indexOf(key);
    }
}
