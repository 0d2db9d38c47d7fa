#include "advice/checks/checks.h"

#include <assert.h>
#include <math.h>
#include <string.h>

#include "advice/figures/holds.h"

#include "base/list.h"

struct finding *finding_add(struct checking *checking, const struct check_row *row, int part,
                            size_t field)
{
    struct finding *finding = LIST_ADD(checking->arena, checking->findings);
    finding->check = row;
    finding->severity = row->severity;
    finding->part = part;
    if (part < 0) {
        return finding;
    }
    const struct part *about = &checking->system->parts[part];
    finding->place = about->place;
    finding_text(finding, "part", about->name);
    if (field != NO_FIELD) {
        const struct origin *origin = part_origin(about, field);
        if (origin != NULL && origin->place.line > 0) {
            finding->place = origin->place;
        }
        finding->assumed = origin != NULL && origin->kind == ORIGIN_ASSUMED;
    }
    return finding;
}

static struct named_quantity *add_quantity(struct finding *finding, const char *name)
{
    assert(finding->quantity_count < FINDING_QUANTITIES);
    struct named_quantity *quantity = &finding->quantities[finding->quantity_count++];
    quantity->name = name;
    quantity->value = NAN;
    return quantity;
}

void finding_quantity(struct finding *finding, const char *name, double value,
                      enum dimension dimension)
{
    struct named_quantity *quantity = add_quantity(finding, name);
    quantity->value = value;
    quantity->dimension = dimension;
}

void finding_bore(struct finding *finding, const char *name, struct length bore)
{
    struct named_quantity *quantity = add_quantity(finding, name);
    quantity->value = bore.m;
    quantity->dimension = DIMENSION_LENGTH;
    quantity->bore_like = true;
}

void finding_text(struct finding *finding, const char *name, const char *text)
{
    add_quantity(finding, name)->text = text;
}

double finding_limit(struct finding *finding, const char *name)
{
    size_t count;
    const struct limit_row *rows = limit_rows(&count);
    for (size_t i = 0; i < count; i++) {
        if (strcmp(rows[i].id, finding->check->limit) == 0) {
            finding_quantity(finding, name, rows[i].value, rows[i].dimension);
            return rows[i].value;
        }
    }
    return NAN;
}

const struct figure *figure_even_beyond(const struct checking *checking, const char *id,
                                        int subject)
{
    for (int i = 0; i < checking->figures->count; i++) {
        const struct figure *figure = &checking->figures->items[i];
        if (strcmp(figure->row->id, id) == 0 && figure->subject == subject) {
            return figure->state == FIGURE_NOT_COMPUTED ? NULL : figure;
        }
    }
    return NULL;
}

const struct figure *figure_about(const struct checking *checking, const char *id, int subject)
{
    const struct figure *figure = figure_even_beyond(checking, id, subject);
    return figure == NULL || holds_spoiled(figure) ? NULL : figure;
}

bool ruling_is_for(const struct checking *checking, const char *rule)
{
    for (int i = 0; i < checking->rulings.count; i++) {
        const struct ruling *ruling = &checking->rulings.items[i];
        if (strcmp(ruling->rule->id, rule) == 0)
            return ruling->concern == RULE_CONCERNS || ruling->concern == RULE_FOR_COMPARISON;
    }
    return false;
}

double figure_value(const struct checking *checking, const char *id, int subject)
{
    const struct figure *figure = figure_about(checking, id, subject);
    return figure == NULL ? NAN : figure->value;
}

double floor_margin(const struct checking *checking, int pedal)
{
    return limit_value("floor-margin-least") *
           pedal_end(&checking->system->parts[pedal].as.pedal).m;
}

void finding_rests_on(struct finding *finding, const struct figure *figure)
{
    if (figure == NULL || figure->state != FIGURE_ASSUMED)
        return;
    finding->assumed = true;
    if (figure_mostly_assumed(figure) && finding->guess == NULL)
        finding->guess = figure;
}

bool part_feeds_axle(const struct system *system, const struct network *network, int part,
                     enum axle axle)
{
    for (int chamber = 0; chamber < part_chambers(&system->parts[part]); chamber++) {
        int from = network_vertex(network, part, chamber);
        for (int v = 0; from >= 0 && v < network->vertex_count; v++) {
            const struct part *reached = &system->parts[network->vertices[v].part];
            if (kind_is_brake(reached->kind) && reached->axle == axle &&
                network_beyond(network, v, from)) {
                return true;
            }
        }
    }
    return false;
}

int part_mirror(const struct system *system, int part)
{
    const struct part *one = &system->parts[part];
    if (one->side == SIDE_NONE || one->axle == AXLE_NONE) {
        return -1;
    }
    for (int i = 0; i < system->part_count; i++) {
        const struct part *other = &system->parts[i];
        if (other->kind == one->kind && other->axle == one->axle && other->side != SIDE_NONE &&
            other->side != one->side) {
            return i;
        }
    }
    return -1;
}
