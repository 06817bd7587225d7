package org.geneticsrules.cross;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.explanation.Cause;
import org.geneticsrules.explanation.Causes;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.explanation.ParentsCase;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.Draw;
import org.geneticsrules.expression.Expressed;
import org.geneticsrules.expression.Level;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Locus;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** Follows the ways through the same diagram that gave the chances, and writes down what was multiplied and added. */
final class Explainer {

    /** More ways than this are no explanation. */
    private static final int MOST_WAYS = 20_000;

    private final CompiledModel compiled;
    private final View view;
    private final Diagram<Phenotype> diagram;
    private final Map<String, Draw> draws = new LinkedHashMap<>();
    private final List<ParentsCases.Kind> kinds;
    private final Citations citations;

    Explainer(
            CompiledModel compiled,
            View view,
            Litter litter,
            Sires sires,
            Parent dam,
            List<List<ParentBox>> males,
            List<ParentBox> dams) {
        this.compiled = compiled;
        this.view = view;
        this.diagram = compiled.diagram(view);
        diagram.levels().forEach(level -> {
            if (level instanceof Level.OfDraw drawn) {
                draws.put(drawn.name(), drawn.draw());
            }
        });
        ParentsCases cases = new ParentsCases(compiled.model(), diagram, litter);
        this.citations = new Citations(compiled, view, litter, sires, dam);
        this.kinds = cases.of(sires, males, dams, litter.read());
    }

    Optional<MatingExplanation> explain() {
        if (kinds.isEmpty()) {
            return Optional.empty();
        }
        List<Way> ways = new ArrayList<>();
        diagram.paths((outcome, box) -> {
            if (outcome < diagram.outcomes().size()) {
                Phenotype phenotype = diagram.outcomes().get(outcome);
                for (ParentsCases.Kind kind : kinds) {
                    way(phenotype, box.variables(), kind).ifPresent(ways::add);
                }
            }
            if (ways.size() > MOST_WAYS) {
                throw new TooLargeException(
                        "ways to explain", ways.size(), MOST_WAYS, "ask about fewer traits at a time.");
            }
            return true;
        });
        return Optional.of(new MatingExplanation(
                kinds.stream().map(ParentsCases.Kind::parents).toList(), ways, hidden(ways), citations.of(kinds)));
    }

    private static Sex sex(ParentsCase parents) {
        return parents.kit().orElse(Sex.FEMALE);
    }

    /** Tells at a unit which pairs agree with a box. */
    private static boolean allows(Unit unit, int locus, int pair, Sex kit, Map<String, Allowed> box) {
        Locus at = unit.loci().get(locus);
        Allowed allowed = box.get(at.id());
        return allowed == null || allowed.allows(at.expression(at.pairs().get(pair), kit));
    }

    private Optional<Way> way(Phenotype phenotype, Map<String, Allowed> box, ParentsCases.Kind kind) {
        ParentsCase parents = kind.parents();
        Sex kit = sex(parents);
        Allowed sexes = box.get(Sex.VARIABLE);
        if (sexes != null && !sexes.allows(kit.word())) {
            return Optional.empty();
        }
        Map<String, Probability> factors = new LinkedHashMap<>();
        kind.carried().forEach((unit, chain) -> {
            if (unit.names().stream().anyMatch(box::containsKey)) {
                factors.put(factorName(unit, box), chain.chance((locus, pair) -> allows(unit, locus, pair, kit, box)));
            }
        });
        draws.forEach((name, draw) -> {
            Allowed allowed = box.get(name);
            if (allowed != null) {
                factors.put(name, draw.outcomes().probabilityOf(allowed::allows));
            }
        });
        Probability product = parents.probability();
        for (Probability factor : factors.values()) {
            product = product.times(factor);
        }
        if (product.isZero()) {
            return Optional.empty();
        }
        Set<String> masks = new LinkedHashSet<>();
        Expressed example = expressed(example(box, kind), box, parents);
        view.traits()
                .forEach(trait -> Optional.ofNullable(example.traits().get(trait))
                        .ifPresent(trace -> masks.addAll(trace.masks())));
        return Optional.of(new Way(
                phenotype,
                parents.number(),
                new Condition(box),
                factors,
                product.dividedBy(parents.counted()),
                new ArrayList<>(masks)));
    }

    /** A locus by its id; linked loci of which several are decided, by their group. */
    private static String factorName(Unit unit, Map<String, Allowed> box) {
        List<String> decided = unit.names().stream().filter(box::containsKey).toList();
        return decided.size() == 1 ? decided.get(0) : unit.group().orElseThrow().pointer();
    }

    /** Expressions of one kit that goes this way. */
    private static Map<String, String> example(Map<String, Allowed> box, ParentsCases.Kind kind) {
        Map<String, String> expressions = new LinkedHashMap<>();
        kind.carried().forEach((unit, chain) -> {
            boolean[] found = {false};
            chain.each((values, weight) -> {
                boolean fits = !found[0];
                for (int l = 0; fits && l < values.length; l++) {
                    fits = allows(unit, l, values[l], sex(kind.parents()), box);
                }
                if (fits) {
                    found[0] = true;
                    for (int l = 0; l < values.length; l++) {
                        Locus locus = unit.loci().get(l);
                        expressions.put(
                                locus.id(), locus.expression(locus.pairs().get(values[l]), sex(kind.parents())));
                    }
                }
            });
        });
        return expressions;
    }

    private Expressed expressed(Map<String, String> expressions, Map<String, Allowed> box, ParentsCase parents) {
        return compiled.ways(expressions, sex(parents), view.stage(), drawn(box), view.traits())
                .outcomes()
                .iterator()
                .next();
    }

    /** One outcome of each draw that a way goes through. */
    private Map<String, String> drawn(Map<String, Allowed> box) {
        Map<String, String> drawn = new LinkedHashMap<>();
        draws.forEach((name, draw) -> {
            Allowed allowed = box.get(name);
            if (allowed != null) {
                draw.values().stream().filter(allowed::allows).findFirst().ifPresent(value -> drawn.put(name, value));
            }
        });
        return drawn;
    }

    private List<Hidden> hidden(List<Way> ways) {
        Map<Phenotype, List<Way>> byPhenotype = new LinkedHashMap<>();
        ways.forEach(way -> byPhenotype
                .computeIfAbsent(way.phenotype(), p -> new ArrayList<>())
                .add(way));
        List<Hidden> hidden = new ArrayList<>();
        for (Phenotype phenotype : diagram.outcomes()) {
            List<Way> leading = byPhenotype.getOrDefault(phenotype, List.of());
            if (leading.isEmpty()) {
                continue;
            }
            for (String locus : compiled.lociRead(view.among(Census.CONCEIVED))) {
                hidden(phenotype, locus, leading).ifPresent(hidden::add);
            }
        }
        return hidden;
    }

    /** What a kit of this look carries at a locus: Bayes' rule over the ways to the look. */
    private Optional<Hidden> hidden(Phenotype phenotype, String name, List<Way> leading) {
        Locus locus = compiled.model().locus(name);
        Map<AllelePair, Probability> joint = new LinkedHashMap<>();
        locus.pairs().forEach(pair -> joint.put(pair, Probability.ZERO));
        Set<Cause> causes = new LinkedHashSet<>();
        for (Way way : leading) {
            ParentsCases.Kind kind = kinds.get(way.parents());
            Map<AllelePair, Probability> here = given(locus, way, kind);
            here.forEach((pair, chance) -> joint.merge(pair, chance.times(way.probability()), Probability::plus));
            if (here.size() > 1) {
                Map<String, Allowed> box = way.expressions().variables();
                causes.addAll(Causes.in(compiled, view, sex(kind.parents()), drawn(box))
                        .of(example(box, kind), name, here.keySet()));
            }
        }
        Probability whole = joint.values().stream().reduce(Probability.ZERO, Probability::plus);
        joint.replaceAll((pair, chance) -> chance.dividedBy(whole));
        Distribution<AllelePair> chances = Distribution.of(joint);
        if (chances.outcomes().size() < 2) {
            return Optional.empty();
        }
        if (Causes.leaveOpen(locus, chances.outcomes(), causes)) {
            causes.add(Causes.across(
                    leading.stream().map(Way::expressions).toList(),
                    view,
                    compiled.model().loci().keySet(),
                    name));
        }
        return Optional.of(new Hidden(
                name, phenotype, new ArrayList<>(chances.outcomes()), Optional.of(chances), new ArrayList<>(causes)));
    }

    /** The chances of the pairs at a locus in kits that go one way. */
    private static Map<AllelePair, Probability> given(Locus locus, Way way, ParentsCases.Kind kind) {
        Map<String, Allowed> box = way.expressions().variables();
        Sex kit = sex(kind.parents());
        Map<AllelePair, Probability> chances = new LinkedHashMap<>();
        kind.carried().forEach((unit, chain) -> {
            int at = unit.names().indexOf(locus.id());
            if (at >= 0) {
                Probability all = chain.chance((l, pair) -> allows(unit, l, pair, kit, box));
                for (int p = 0; p < locus.pairs().size(); p++) {
                    int only = p;
                    Probability both =
                            chain.chance((l, pair) -> (l != at || pair == only) && allows(unit, l, pair, kit, box));
                    if (!both.isZero()) {
                        chances.put(locus.pairs().get(p), both.dividedBy(all));
                    }
                }
            }
        });
        return chances;
    }
}
