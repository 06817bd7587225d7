package org.geneticsrules.testing;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.model.Allele;
import org.geneticsrules.model.Case;
import org.geneticsrules.model.CaseState;
import org.geneticsrules.model.Dominance;
import org.geneticsrules.model.DominanceBuilder;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.LocusBuilder;
import org.geneticsrules.model.Mask;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.ModelBuilder;
import org.geneticsrules.model.Phase;
import org.geneticsrules.model.Population;
import org.geneticsrules.model.TraitRule;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Probability;
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
            builder.locus(locus(locus.id()), described -> describe(locus, described));
        }
        original.groups().values().forEach(group -> builder.group(renamed(group)));
        original.viability().values().forEach(one -> builder.viability(renamed(one)));
        for (TraitRule rule : original.rules().values()) {
            builder.trait(rule.trait(), described -> {
                if (!rule.visible()) {
                    described.inner(rule.states().toArray(String[]::new));
                }
                rule.cases()
                        .forEach(one -> described.when(new Case(
                                one.id(), condition(original, one.when()), renamed(one.gives()), one.evidence())));
                rule.otherwise().ifPresent(rest -> described.otherwise(renamed(rest.gives()), rest.evidence()));
            });
        }
        for (Mask mask : original.masks().values()) {
            builder.mask(new Mask(
                    mask.id(), condition(original, mask.when()), mask.covers(), mask.over(), Optional.empty()));
        }
        for (Population population : original.populations().values()) {
            builder.population(
                    population.id(),
                    described -> population
                            .frequencies()
                            .forEach((at, frequencies) -> original.locus(at)
                                    .alleles()
                                    .keySet()
                                    .forEach(allele -> described.frequency(
                                            locus(at), allele(allele), frequencies.probability(allele)))));
        }
        return new Relabelled(builder.build());
    }

    private static void describe(Locus locus, LocusBuilder described) {
        described.symbol("Renamed" + locus.symbol());
        reversed(locus.alleles()).keySet().forEach(allele -> described.allele(Allele.of(allele(allele))));
        described.expressions(
                locus.expressions().stream().map(Relabelled::expression).toArray(String[]::new));
        String partner = locus.transmission().partner().orElse("");
        if (locus.dependsOnSex()) {
            for (Sex sex : Sex.values()) {
                described.in(sex, one -> dominance(locus.dominance(sex), partner, one));
            }
        } else {
            described.dominance(both -> dominance(locus.dominance(Sex.FEMALE), partner, both));
        }
        locus.absent().map(Relabelled::expression).ifPresent(described::absent);
        locus.mutation()
                .forEach((from, rates) ->
                        rates.forEach((to, rate) -> described.mutation(allele(from), allele(to), rate)));
    }

    private static void dominance(Dominance stated, String partner, DominanceBuilder described) {
        stated.order()
                .forEach(order -> described.order(
                        new Dominance.Order(allele(order.dominant()), allele(order.recessive()), order.evidence())));
        stated.shows()
                .forEach(shown -> described.shows(
                        allele(shown.first())
                                + shown.second()
                                        .map(second -> "/" + (second.equals(partner) ? partner : allele(second)))
                                        .orElse(""),
                        expression(shown.expression()),
                        shown.evidence()));
    }

    private static LinkageGroup renamed(LinkageGroup group) {
        Recombination recombination = group.recombination();
        if (recombination instanceof Recombination.Crossovers table) {
            Map<String, Probability> patterns = new LinkedHashMap<>();
            table.patterns().forEach((pattern, chance) -> patterns.put(renamed(group, pattern), chance));
            recombination = new Recombination.Crossovers(patterns);
        }
        return new LinkageGroup(
                group.id(),
                group.title(),
                group.transmission(),
                group.loci().stream().map(Relabelled::locus).toList(),
                recombination,
                group.evidence());
    }

    private static String renamed(LinkageGroup group, String pattern) {
        int set = group.recombining(pattern).orElseThrow();
        StringBuilder names = new StringBuilder();
        for (int i = 0; i + 1 < group.loci().size(); i++) {
            if ((set >> i & 1) == 1) {
                names.append(names.isEmpty() ? "" : " ")
                        .append(locus(group.loci().get(i)))
                        .append('-')
                        .append(locus(group.loci().get(i + 1)));
            }
        }
        return names.isEmpty() ? pattern : names.toString();
    }

    private static Viability renamed(Viability one) {
        Set<String> expressions = new LinkedHashSet<>();
        one.expressions().forEach(expression -> expressions.add(expression(expression)));
        return new Viability(
                one.id(), locus(one.locus()), expressions, one.sex(), one.birth(), one.scored(), one.evidence());
    }

    private static CaseState renamed(CaseState gives) {
        if (gives instanceof CaseState.Threshold threshold) {
            Map<String, Map<String, Integer>> doses = new LinkedHashMap<>();
            threshold.doses().forEach((locus, dose) -> {
                Map<String, Integer> renamed = new LinkedHashMap<>();
                dose.forEach((expression, amount) -> renamed.put(expression(expression), amount));
                doses.put(locus(locus), renamed);
            });
            return new CaseState.Threshold(doses, threshold.residual(), threshold.below(), threshold.cuts());
        }
        return gives;
    }

    /**
     * Renames a genotype of the original model.
     *
     * @param original a genotype
     * @return the same genotype in the other letters
     */
    public Genotype genotype(Genotype original) {
        Map<String, String> plain = new LinkedHashMap<>();
        RandomModels.plain(original).forEach((locus, pair) -> {
            StringBuilder renamed = new StringBuilder();
            for (String allele : pair.isEmpty() ? new String[0] : pair.split("/", -1)) {
                renamed.append(renamed.isEmpty() ? "" : "/").append(allele(allele));
            }
            plain.put(locus(locus), renamed.toString());
        });
        Map<String, Phase.Strands> strands = new LinkedHashMap<>();
        original.phase().strands().forEach((locus, both) -> {
            Map<String, Allele> alleles = model.locus(locus(locus)).alleles();
            strands.put(
                    locus(locus),
                    new Phase.Strands(
                            alleles.get(allele(both.one().id())),
                            alleles.get(allele(both.other().id()))));
        });
        return Genotype.of(model, RandomModels.genotype(model, plain).pairs().values(), Phase.of(model, strands));
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
