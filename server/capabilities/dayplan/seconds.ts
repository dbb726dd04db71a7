/** Who goes along: named, offered by themselves, or given back in one tap; nobody is booked twice. */
import * as commands from '@footboard/shared/capabilities/dayplan/round-commands';
import { secondGaveBack, secondNamed } from '@footboard/shared/capabilities/dayplan/round-events';
import { isQualified } from '@footboard/shared/kernel/author';
import { newEvent } from '@footboard/shared/kernel/event-type';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import { underPolicy } from '../people/policy.ts';
import { isRefusal, readsStay, stayStream } from '../stays/standing.ts';
import { bookedThen, overlaps, readsBookings, visitsOf } from './bookings.ts';
import { canGo, openStay, ownVisit, visitThen } from './visits.ts';

const nameSecond = decider({
  command: commands.nameSecond,
  reads: readsStay,
  further: readsBookings,
  restsOnAll: true,
  decide: (data, context) => {
    const standing = openStay(context, data.stay);
    if (isRefusal(standing)) return standing;
    // Anybody may offer themselves; somebody else is named by whoever goes, or by a qualified person.
    const own = data.second === context.author.staff;
    const visit = own ? visitThen(context, standing, data.visit) : ownVisit(context, standing, data.visit);
    if (isRefusal(visit)) return visit;
    if (visit.second === data.second) return accept();
    if (visit.by === data.second) {
      return refuse(
        'second-is-first',
        'that is who has the visit; the second person is somebody else',
        'Choose somebody else as the second person.',
        '/second',
      );
    }
    if (own && visit.second !== null && !isQualified(context.author)) {
      return refuse(
        'second-other',
        'another second person is named for it',
        'Nothing to do: somebody goes along. Ask whoever has the visit if you should go instead.',
        '/second',
      );
    }
    const cannot = canGo(context, data.second, '/second');
    if (cannot) return cannot;
    const busy = visitsOf(context, data.second, data.stay).find((v) => overlaps(v, visit));
    if (busy) return bookedThen(context, busy, '/second');
    return accept(newEvent(secondNamed, stayStream(data.stay), { visit: data.visit, second: data.second }));
  },
});

const giveBackSecond = decider({
  command: commands.giveBackSecond,
  reads: readsStay,
  decide: (data, context) => {
    const standing = openStay(context, data.stay);
    if (isRefusal(standing)) return standing;
    const visit = ownVisit(context, standing, data.visit);
    if (isRefusal(visit)) return visit;
    if (visit.second === null) {
      return refuse(
        'second-none',
        'nobody is named to go along',
        'Nothing to do: a second person is looked for already.',
        '/visit',
      );
    }
    return accept(
      newEvent(secondGaveBack, stayStream(data.stay), { visit: data.visit, second: visit.second }),
    );
  },
});

export const deciders = underPolicy([nameSecond, giveBackSecond]);
